import { describe, expect, it } from 'vitest'
import { LIMITS, limitsSchema } from '../../../src/contract/limits.ts'
import { LIMIT_WORDS, shownLimit, withLimit } from '../../../src/renderer/intake/limit-words.ts'

describe('Limits are shown in units that people use', () => {
  it('as they are made', () => {
    expect(LIMIT_WORDS.map((words) => `${shownLimit(LIMITS, words)} ${words.unit}`)).toEqual([
      '1000 megapixels',
      '2000 pages',
      '2048 MB',
      '2048 MB',
      '120 seconds',
    ])
  })

  it('and whatever is written, the host takes it', () => {
    for (const words of LIMIT_WORDS) {
      for (const shown of [words.least, words.most, 0, -1, 1e12, 12.34]) {
        const limits = withLimit(LIMITS, words, shown)
        expect(limitsSchema.safeParse(limits).error, `${words.label}: ${shown}`).toBeUndefined()
      }
      expect(withLimit(LIMITS, words, Number.NaN)).toBe(LIMITS)
      expect(withLimit(LIMITS, words, shownLimit(LIMITS, words))).toEqual(LIMITS)
    }
  })
})
