import { describe, expect, it } from 'vitest'
import { glyphGroups } from '../../../../src/core/reading/finding/glyph-groups.ts'
import type { SeenGlyph } from '../../../../src/core/reading/glyphs/seen-glyph.ts'
import { jitterOf, type SetPart, setGlyphs } from '../layout/set-glyphs.ts'

const HIGH = 22
const fraction = (over: string, under: string): SetPart => ({ over, under, by: 'bar' })

function placed(rows: readonly (readonly SetPart[])[], dx: number, dy: number, seed: number): SeenGlyph[] {
  return setGlyphs(rows, { jitter: jitterOf(seed), amount: 0.04 }).map((glyph) => ({
    ...glyph,
    centre: [glyph.centre[0] + dx, glyph.centre[1] + dy],
  }))
}

const figuresOf = (glyphs: readonly SeenGlyph[]): (string | null)[] =>
  glyphGroups(glyphs, HIGH, { unit: 'in' })
    .filter(({ some }) => some > 0.4)
    .map(({ text }) => text)
    .sort()

describe('glyphs of a sheet', () => {
  it.each([1, 2, 3])('are parted into figures that stand two heights apart (%d)', (seed) => {
    const glyphs = [
      ...placed([['7 ', fraction('3', '4'), '"']], 0, 0, seed),
      ...placed([['12']], 160, 0, seed + 1),
      ...placed([['5 HOLES']], 0, 200, seed + 2),
    ]
    expect(figuresOf(glyphs)).toEqual(['12"', '5 HOLES', '7 3/4"'])
  })

  it.each([1, 2, 3])(
    'are one figure where a line under another says how large what it counts is (%d)',
    (seed) => {
      const glyphs = placed([['5 HOLES'], ['DRILL ', fraction('5', '8')]], 0, 0, seed)
      expect(figuresOf(glyphs)).toEqual(['5 HOLES DRILL 5/8"'])
    },
  )

  it('are no figure where words stand with them that no notation knows', () => {
    const groups = glyphGroups(placed([['REMOVE ALL EDGES']], 0, 0, 1), HIGH, { unit: 'in' })
    expect(groups.every(({ text }) => text === null)).toBe(true)
  })
})
