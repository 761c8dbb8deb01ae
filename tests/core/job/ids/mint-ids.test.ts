import { describe, expect, it } from 'vitest'
import { ALPHABET, ID_KINDS, LENGTH, mintedFor } from '../../../../src/core/job/ids/id-form.ts'
import { mintIds } from '../../../../src/core/job/ids/mint-ids.ts'
import { mint as hostMint } from '../../../../src/main/services/ids/mint.ts'
import { seededMint } from './seeded-mint.ts'

/** Chi-square of how often each character stands in ids, over all their places and over each by itself. */
function unevenness(ids: readonly string[]): { whole: number; byPlace: number[] } {
  const counts = new Uint32Array(LENGTH * 128)
  for (const id of ids) {
    for (let place = 0; place < LENGTH; place++) {
      const at = 128 * place + id.charCodeAt(id.length - LENGTH + place)
      counts[at] = (counts[at] ?? 0) + 1
    }
  }
  const codes = Array.from(ALPHABET, (letter) => letter.charCodeAt(0))
  const chiSquare = (count: (code: number) => number, of: number): number =>
    codes.reduce((sum, code) => sum + (count(code) - of) ** 2 / of, 0)
  const places = Array.from({ length: LENGTH }, (_, place) => place)
  const count = (place: number, code: number): number => counts[128 * place + code] ?? 0
  const expected = ids.length / ALPHABET.length
  return {
    whole: chiSquare((code) => places.reduce((sum, place) => sum + count(place, code), 0), expected * LENGTH),
    byPlace: places.map((place) => chiSquare((code) => count(place, code), expected)),
  }
}

/** Exceeded by chance once in 10^9, with 27 degrees of freedom. Worked out by SciPy 1: chi2.isf(1e-9, 27). */
const ONCE_IN_A_BILLION = 96.39

describe('an id that is given', () => {
  it('begins with the letter of its kind, and is told from one that a person writes', () => {
    const mint = seededMint(1)
    const ids = ID_KINDS.map((kind) => mint(kind))
    expect(ids.map(mintedFor)).toEqual(ID_KINDS)
    expect(new Set(ids.map((id) => id.charAt(0))).size).toBe(ID_KINDS.length)
    for (const id of ids) expect(id).toMatch(/^[a-z]-[2-9b-df-hjkmnp-tv-z]{13}$/)
    const written = ['M12', 'p1', 'AR', 'm-', 'm-2222', `m-${'2'.repeat(14)}`, `x-${'2'.repeat(13)}`, 'mean']
    expect(written.map(mintedFor)).toEqual(written.map(() => undefined))
  })

  it('has no letter that is taken for another, and more than 60 bits of chance', () => {
    expect(ALPHABET).not.toMatch(/[aeioulI01]/)
    expect(new Set(ALPHABET).size).toBe(ALPHABET.length)
    expect(LENGTH * Math.log2(ALPHABET.length)).toBeGreaterThan(60)
  })

  it('is another each time, a million times over, with every letter as often as any other', () => {
    const mint = seededMint(20260301)
    const ids = Array.from({ length: 1_000_000 }, () => mint('mark'))
    expect(new Set(ids).size).toBe(ids.length)
    const { whole, byPlace } = unevenness(ids)
    expect(whole).toBeLessThan(ONCE_IN_A_BILLION)
    expect(Math.max(...byPlace)).toBeLessThan(ONCE_IN_A_BILLION)
  })

  it('is so by the chance of the host, too', () => {
    const ids = Array.from({ length: 100_000 }, () => hostMint('note'))
    expect(new Set(ids).size).toBe(ids.length)
    const { whole, byPlace } = unevenness(ids)
    expect(whole).toBeLessThan(ONCE_IN_A_BILLION)
    expect(Math.max(...byPlace)).toBeLessThan(ONCE_IN_A_BILLION)
  })

  it('would show by this that every byte was taken for a letter, as no more than 252 of 256 may be', () => {
    const letters = Array.from({ length: 256 }, (_, byte) => ALPHABET.charAt(byte % ALPHABET.length))
    const ids = Array.from({ length: 100_000 }, (_, i) =>
      Array.from({ length: LENGTH }, (_, k) => letters[(13 * i + k) % 256]).join(''),
    )
    expect(unevenness(ids).whole).toBeGreaterThan(ONCE_IN_A_BILLION)
  })

  it('waits for chance that is of use', () => {
    const given: number[] = []
    const stubborn = mintIds((count) => {
      given.push(count)
      return given.length < 4 ? new Uint8Array(count).fill(255) : new Uint8Array(count).fill(251)
    })
    expect(stubborn('mark')).toBe(`m-${'z'.repeat(13)}`)
    expect(given).toEqual([13, 13, 13, 13])
  })
})
