import { describe, expect, it } from 'vitest'
import { correlatedNumbers } from '../../../src/core/uncertainty/correlated.ts'
import { covariance } from '../../../src/core/uncertainty/covariance.ts'
import { randomStream } from '../../../src/core/uncertainty/random.ts'

const worstDifference = (given: number[][]): number => {
  const x = correlatedNumbers(
    given.map((_, i) => i),
    given,
    'given',
  )
  expect(x.map((v) => v.value)).toEqual(given.map((_, i) => i))
  return Math.max(
    ...given.flatMap((row, i) =>
      row.map((v, j) => {
        const size = Math.sqrt((given[i]?.[i] ?? 0) * (given[j]?.[j] ?? 0)) || 1
        return Math.abs(covariance(x[i] as (typeof x)[number], x[j] as (typeof x)[number]) - v) / size
      }),
    ),
  )
}

describe('numbers with a given covariance', () => {
  it('reproduce it, whatever the sizes of the quantities', () => {
    const random = randomStream(1911)
    for (let trial = 0; trial < 50; trial++) {
      const n = 1 + Math.floor(5 * random.uniform())
      const sizes = Array.from({ length: n }, () => 10 ** (12 * random.uniform() - 6))
      const root = sizes.map((s) => sizes.map(() => s * random.normal()))
      const given = root.map((a) => root.map((b) => a.reduce((sum, v, k) => sum + v * (b[k] ?? 0), 0)))
      expect(worstDifference(given)).toBeLessThan(1e-12)
    }
  })

  it('reproduce a singular one: the same quantity twice, opposite quantities, an exact one among them', () => {
    expect(
      worstDifference([
        [4, 4],
        [4, 4],
      ]),
    ).toBeLessThan(1e-12)
    expect(
      worstDifference([
        [1, -10],
        [-10, 100],
      ]),
    ).toBeLessThan(1e-12)
    expect(
      worstDifference([
        [1, 0, 0.5],
        [0, 0, 0],
        [0.5, 0, 1],
      ]),
    ).toBeLessThan(1e-12)
    expect(worstDifference([[0]])).toBe(0)
    // Rank one in three quantities.
    expect(worstDifference([1, -2, 3].map((a) => [1, -2, 3].map((b) => a * b)))).toBeLessThan(1e-12)
  })

  it('are refused when no errors could be correlated so', () => {
    expect(() =>
      correlatedNumbers(
        [0, 0],
        [
          [1, 2],
          [2, 1],
        ],
        'impossible',
      ),
    ).toThrow(/not a covariance/)
  })
})
