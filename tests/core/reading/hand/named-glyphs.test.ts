import { describe, expect, it } from 'vitest'
import type { SeenGlyph } from '../../../../src/core/reading/glyphs/seen-glyph.ts'
import { namedGlyphs } from '../../../../src/core/reading/hand/named-glyphs.ts'
import { signsOf, waysToWrite } from '../../../../src/core/reading/hand/signs-of-text.ts'

const NAMES = [...'0123456789', ...'ABCDEFGHIJKLMNOPQRSTUVWXYZ', ...'.\'"/_-Ø°']

/** A glyph that looks like one name, and a little like another. */
function glyph(name: string, [x, y]: readonly [number, number], height = 20, present = 0.98): SeenGlyph {
  const logs = new Float32Array(NAMES.length).fill(-9)
  logs[NAMES.indexOf(name)] = 0
  return {
    centre: [x, y],
    width: name === '_' ? 22 : 12,
    height,
    present,
    alternatives: [{ text: name, probability: 0.99 }],
    traits: Float32Array.of(x, y),
    logs,
  }
}

/** 3/8 as a stack after a 2. */
const TWO_AND = [
  glyph('2', [10, 40], 24),
  glyph('3', [36, 26]),
  glyph('_', [36, 40], 3),
  glyph('8', [36, 54]),
]
const named = (text: string, seen: readonly SeenGlyph[]) =>
  namedGlyphs(text, [seen], NAMES).map((one) => `${NAMES[one.glyph]}@${one.traits[0]},${one.traits[1]}`)

describe('glyphs by the names that a known text gives them', () => {
  it('go by the order in which a stacked fraction is read', () => {
    expect(named('2 3/8"', TWO_AND)).toEqual(['2@10,40', '3@36,26', '_@36,40', '8@36,54'])
    expect(named('2⅜', [...TWO_AND].reverse())).toEqual(['2@10,40', '3@36,26', '_@36,40', '8@36,54'])
  })

  it('bear the name of the text where the strokes looked like another', () => {
    expect(named('2 5/8', TWO_AND)).toEqual(['2@10,40', '5@36,26', '_@36,40', '8@36,54'])
  })

  it('are those alone that the text has a sign for', () => {
    const speck = glyph('.', [70, 48], 3, 0.4)
    expect(named('2 3/8', [...TWO_AND, speck])).toEqual(['2@10,40', '3@36,26', '_@36,40', '8@36,54'])
  })

  it('are none where the text is that of another figure', () => {
    expect(named('7 1/4', TWO_AND)).toEqual([])
    expect(named("12'-6", TWO_AND)).toEqual([])
    expect(named('', TWO_AND)).toEqual([])
    expect(named('2 3/8', [])).toEqual([])
  })

  it('are found whichever of the ways that the figure may run is the right one', () => {
    const askew = [glyph('L', [5, 5]), glyph('M', [50, 5])]
    expect(namedGlyphs('2 3/8', [askew, TWO_AND], NAMES)).toHaveLength(4)
  })

  it('are found where a diameter is told after the size', () => {
    const row = [...'34DIA'].map((name, i) => glyph(name, [12 + 16 * i, 40]))
    expect(named('Ø 34', row)).toEqual(['3@12,40', '4@28,40', 'D@44,40', 'I@60,40', 'A@76,40'])
  })
})

describe('the signs of a text', () => {
  // Common practice, no source: what passes for feet, inches, dashes and fractions.
  it('are named alike however they are set', () => {
    expect(signsOf('5’–2¾″')).toEqual(['5', "'", '-', '2', '3', '/', '4', '"'])
    expect(signsOf("7''")).toEqual(['7', '"'])
    expect(signsOf('2 holes')).toEqual(['2', 'H', 'O', 'L', 'E', 'S'])
  })

  it('may stand without a unit, and what a size is of after it', () => {
    expect(waysToWrite('8.3 mm')).toContain('8.3')
    expect(waysToWrite('Ø 5/8"')).toContain('5/8 DIA.')
    expect(waysToWrite('R 5/8"')).toContain('5/8 RAD.')
  })
})
