import { describe, expect, it } from 'vitest'
import type { SeenGlyph } from '../../../../src/core/reading/glyphs/seen-glyph.ts'
import type { Lattice } from '../../../../src/core/reading/lattice.ts'
import { layOut, type WeightedLattice } from '../../../../src/core/reading/layout/lay-out.ts'
import { jitterOf, type SetPart, setGlyphs } from './set-glyphs.ts'

/** The likeliest text of each slot, one after another. */
const textOf = ({ slots }: Lattice): string =>
  slots.map(({ alternatives }) => alternatives[0]?.text ?? '?').join('')
const first = (ways: readonly WeightedLattice[]): string =>
  ways[0] === undefined ? '' : textOf(ways[0].lattice)

const bar = (over: string, under: string): SetPart => ({ over, under, by: 'bar' })
const bare = (over: string, under: string): SetPart => ({ over, under, by: 'nothing' })
const slash = (over: string, under: string): SetPart => ({ over, under, by: 'slash' })

/** Figures as they are set, and how they are read. */
const FIGURES: readonly [string, readonly (readonly SetPart[])[]][] = [
  ['25', [['25']]],
  ['118', [['118']]],
  ['1 3/8', [['1', bar('3', '8')]]],
  ['12 13/16"', [['12', bar('13', '16'), '"']]],
  ['3/4', [[bar('3', '4')]]],
  ['2 5/8', [['2', bare('5', '8')]]],
  ['1 3/8', [['1', slash('3', '8')]]],
  ['10 11/16', [['10', slash('11', '16')]]],
  ['1 3/8', [['1 3/8']]],
  ['2\'-4 1/2"', [["2'-4", bar('1', '2'), '"']]],
  ['Ø1.625', [['Ø1.625']]],
  ["47°30'", [["47°30'"]]],
  ['4 HOLES DRILL 9/32', [['4 HOLES'], ['DRILL 9/32']]],
  ['4 HOLES DRILL 9/32', [['4 HOLES'], ['DRILL ', bar('9', '32')]]],
  ['2.500 +.002 -.001', [['2.500', { over: '+.002', under: '-.001', by: 'limits' }]]],
  ['1 1/2 R', [['1', bar('1', '2'), ' R']]],
  ['7 DIA.', [['7 DIA.']]],
]

describe('layout of seen glyphs', () => {
  it.each(FIGURES)('reads %s', (text, rows) => {
    expect(first(layOut(setGlyphs(rows, { jitter: jitterOf(1) })))).toBe(text)
  })

  it.each([1, 2, 3])('reads jittered, sloping figures, seed %d', (seed) => {
    const jitter = jitterOf(seed)
    const wrong: string[] = []
    let among = 0
    for (let n = 0; n < 600; n++) {
      const [text, rows] = FIGURES[n % FIGURES.length] ?? ['', []]
      const ways = layOut(setGlyphs(rows, { jitter, amount: 0.05, slope: 0.08 * jitter() }))
      if (ways.some(({ lattice }) => textOf(lattice) === text)) among++
      if (first(ways) !== text) wrong.push(`${text} as ${first(ways)}`)
      expect(ways.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1)
      expect(ways.length).toBeLessThanOrEqual(3)
    }
    expect(wrong.length, wrong.slice(0, 12).join('; ')).toBeLessThanOrEqual(12)
    expect(among).toBeGreaterThanOrEqual(594)
  })

  it('takes what was seen twice once, and could be either', () => {
    const glyphs = setGlyphs([['25']], { jitter: jitterOf(1) })
    const again: SeenGlyph[] = glyphs.map((glyph) => ({
      ...glyph,
      centre: [glyph.centre[0] + 1, glyph.centre[1] - 1],
      present: 0.5,
      alternatives: [{ text: 'S', probability: 0.9 }],
    }))
    const ways = layOut([...again, ...glyphs])
    expect(first(ways)).toBe('25')
    expect(ways[0]?.lattice.slots.filter(({ box }) => box)).toHaveLength(2)
    expect(ways[0]?.lattice.slots[0]?.alternatives.map(({ text }) => text)).toContain('S')
  })

  it('drops a faint mark far off, and doubts a surer one', () => {
    const glyphs = setGlyphs([['1', bar('3', '8')]], { jitter: jitterOf(1) })
    const stray = (present: number): SeenGlyph => ({
      centre: [220, 45],
      width: 12,
      height: 20,
      present,
      alternatives: [{ text: 'L', probability: 0.9 }],
    })
    expect(first(layOut([...glyphs, stray(0.2)]))).toBe('1 3/8')
    const [way] = layOut([...glyphs, stray(0.9)])
    expect(way?.lattice.slots.at(-1)?.alternatives[0]).toEqual({
      text: '',
      probability: expect.closeTo(0.82, 2),
    })
  })

  it('gives no name to what is gone under a bar', () => {
    const glyphs = setGlyphs([['1', bar('3', '8')]], { jitter: jitterOf(1) }).filter(
      ({ alternatives }) => alternatives[0]?.text !== '8',
    )
    expect(layOut(glyphs).map(({ lattice }) => textOf(lattice))).toContain('1 3/?')
  })

  it('tells both of two rows and a fraction without its bar', () => {
    const ways = layOut(setGlyphs([[bare('3', '8')]], { jitter: jitterOf(1) }))
    expect(ways.map(({ lattice }) => textOf(lattice)).sort()).toEqual(['3 8', '3/8'])
  })

  it('keeps what may not be there as such, probabilities at most 1 in each slot', () => {
    const glyphs = setGlyphs([['1 3/8']], { jitter: jitterOf(1) }).map((one) => ({ ...one, present: 0.6 }))
    for (const { lattice } of layOut(glyphs))
      for (const { alternatives, box } of lattice.slots) {
        expect(alternatives.reduce((sum, { probability }) => sum + probability, 0)).toBeLessThanOrEqual(
          1 + 1e-9,
        )
        if (box) expect(alternatives.find(({ text }) => text === '')?.probability).toBeCloseTo(0.4)
      }
  })

  it('is of nothing one lattice without slots', () => {
    expect(layOut([])).toEqual([{ lattice: { slots: [] }, weight: 1 }])
  })
})
