import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { pagesIn, rangesOf } from '../../../src/renderer/intake/page-ranges.ts'
import { sentenceOf } from '../../../src/renderer/words/window-words.ts'

describe('Pages are written as people write them', () => {
  it.each([
    ['1-3, 5', [1, 2, 3, 5]],
    ['5 1–3', [1, 2, 3, 5]],
    ['2;4 ;2', [2, 4]],
    ['7-', [7, 8, 9]],
    ['-2', [1, 2]],
    [' 3 - 4 ', [3, 4]],
    ['', []],
  ])('%s', (text, pages) => {
    expect(pagesIn(text, 9)).toEqual({ pages })
  })

  it.each([
    ['0', 'There is no page 0: the last one is 9.'],
    ['8-12', 'There is no page 12: the last one is 9.'],
    ['4-2', '“4-2” runs backwards: write it as 2-4.'],
    ['all', '“all” is no page: write them as 1-3, 5.'],
    ['1-2-3', '“1-2-3” is no page: write them as 1-3, 5.'],
    ['-', '“-” is no page: write them as 1-3, 5.'],
  ])('%s is refused', (text, problem) => {
    const read = pagesIn(text, 9)
    expect(sentenceOf('problem' in read ? read.problem : null)).toBe(problem)
  })

  it('and what is chosen reads back as it is shown', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.integer({ min: 1, max: 200 })), (pages) => {
        const sorted = [...pages].sort((a, b) => a - b)
        expect(pagesIn(rangesOf(pages), 200)).toEqual({ pages: sorted })
      }),
    )
  })
})
