import { describe, expect, it } from 'vitest'
import { glyphReader } from '../../../../src/core/reading/box/glyph-reader.ts'
import { findFigures } from '../../../../src/core/reading/finding/find-figures.ts'
import { smallSheet } from '../drawn/sheet/small-sheet.ts'
import { lookForAll, scoreSheet, type TrueLettering } from '../judge/score-sheet.ts'

/** The seed, the lettering, and where the picture begins on its page. */
const SHEETS = [
  [1, 'Work Sans', 0, 0],
  [2, 'pen, upright', 3000, 2000],
] as const

describe('figures of a sheet', () => {
  const reader = glyphReader()

  it('are found where they stand and read, and what is listed beside is not told as some', async () => {
    const sum = { figures: 0, found: 0, exact: 0, shown: 0, invented: 0, words: 0 }
    const told: string[] = []
    for (const [seed, lettering, left, top] of SHEETS) {
      const sheet = await smallSheet(seed, lettering)
      const picture = { ...sheet.picture, left, top }
      const [figures, words] = [sheet.figures, sheet.words].map((all) =>
        all.map(({ text, frame }): TrueLettering => {
          const [x, y] = frame.centre
          return { text, frame: { ...frame, centre: [x + left, y + top] } }
        }),
      )
      const score = scoreSheet(lookForAll(reader, picture, picture, 'in'), figures ?? [], words ?? [])
      for (const key of Object.keys(sum) as (keyof typeof sum)[]) sum[key] += score[key]
      told.push(...score.missed, ...score.wrong)
    }
    expect(sum.figures).toBeGreaterThanOrEqual(12)
    expect(sum.found / sum.figures, told.join(' | ')).toBeGreaterThanOrEqual(0.9)
    expect(sum.exact / sum.figures, told.join(' | ')).toBeGreaterThanOrEqual(0.8)
    expect(sum.invented).toBeLessThanOrEqual(1)
    expect(sum.words).toBeLessThanOrEqual(1)
  })

  it('are none on a bare sheet', () => {
    const data = new Uint8Array(300 * 200).fill(225)
    expect(findFigures(reader, { left: 0, top: 0, width: 300, height: 200, data })).toEqual([])
  })
})
