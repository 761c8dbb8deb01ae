import { describe, expect, it } from 'vitest'
import { newIdentities, newIdentity } from '../../../../src/core/job/ids/new-identity.ts'
import { seededMint } from './seeded-mint.ts'

const mint = seededMint(1)
const numberAfter = (...ids: string[]): number =>
  newIdentity(
    'mark',
    ids.map((id) => ({ id })),
    mint,
  ).number

describe('what is new gets the next number', () => {
  it('after those of ids that were numbers, and 1 where there are none', () => {
    expect(numberAfter()).toBe(1)
    expect(numberAfter('M1', 'M12', 'M3')).toBe(13)
    expect(numberAfter('M9', 'M10')).toBe(11)
  })

  it('whatever else people call their things', () => {
    expect(numberAfter('MM7', 'm8', 'M4b', 'M-5', 'bore', 'M', 'N30', `M${'9'.repeat(20)}`)).toBe(1)
  })

  it('after those of things that were given their numbers, and goes on from there', () => {
    const next = newIdentities('mark', [{ id: mint('mark'), number: 7 }, { id: 'M2' }], mint)
    const given = [next(), next(), next()]
    expect(given.map(({ number }) => number)).toEqual([8, 9, 10])
    expect(new Set(given.map(({ id }) => id)).size).toBe(3)
  })

  it('for itself in each basis of evidence', () => {
    const evidence = [
      { id: 'p1', basis: 'printed' },
      { id: 'p2', basis: 'printed' },
      { id: mint('evidence'), number: 5, basis: 'scaled' },
      { id: 'p9', basis: 'found' },
    ]
    const numbers = (['printed', 'scaled', 'found', 'derived'] as const).map(
      (basis) => newIdentity(basis, evidence, mint).number,
    )
    expect(numbers).toEqual([3, 6, 1, 1])
  })
})
