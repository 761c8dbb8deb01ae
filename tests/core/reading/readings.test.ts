import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Lattice } from '../../../src/core/reading/lattice.ts'
import { beginsNoFigure, isNoFigure } from '../../../src/core/reading/no-figure.ts'
import { patternLattice } from '../../../src/core/reading/pattern-lattice.ts'
import { readings } from '../../../src/core/reading/readings.ts'
import { bruteForce, isFigure, lattices } from './all-texts.ts'
import { randomOf } from './hard-figures.ts'

describe('the readings of a lattice', () => {
  it('have the probabilities that all texts together give, whatever the lattice', () => {
    fc.assert(
      fc.property(lattices, (lattice) => {
        const read = readings(lattice, { unit: 'in', most: 2000 })
        const all = bruteForce(lattice)
        expect(read.unsearched).toBeCloseTo(0, 8)
        expect(read.unparsed.probability).toBeCloseTo(all.unparsed, 9)
        expect(read.unnamed).toBeCloseTo(1 - all.named, 9)
        expect(read.figures.map(({ text }) => text).sort()).toEqual([...all.figures.keys()].sort())
        for (const { text, probability } of read.figures) {
          expect(probability, text).toBeCloseTo(all.figures.get(text) ?? Number.NaN, 9)
        }
        const sorted = read.figures.map(({ probability }) => probability)
        expect(sorted).toEqual([...sorted].sort((a, b) => b - a))
      }),
      { numRuns: 150, seed: 11 },
    )
  })

  it('lose no probability where the search is cut short, and find the likeliest first', () => {
    fc.assert(
      fc.property(lattices, fc.integer({ min: 1, max: 12 }), (lattice, most) => {
        const read = readings(lattice, { unit: 'in', most })
        const sum = read.figures.reduce((total, { probability }) => total + probability, 0)
        expect(sum + read.unparsed.probability + read.unsearched + read.unnamed).toBeCloseTo(1, 8)
        // What was found is never said to be likelier than it is, and falls short by no more than was left.
        const all = bruteForce(lattice).figures
        for (const { text, probability } of read.figures) {
          const whole = all.get(text) ?? Number.NaN
          expect(probability).toBeLessThanOrEqual(whole + 1e-9)
          expect(probability).toBeGreaterThanOrEqual(whole - read.unsearched - 1e-9)
        }
      }),
      { numRuns: 100, seed: 12 },
    )
  })

  it('never bend a text: 1 38 is no 1 3/8', () => {
    const read = readings(patternLattice('1 38'), { unit: 'in' })
    expect(read.figures).toEqual([])
    expect(read.unparsed).toEqual({ probability: 1, likeliest: { text: '1 38', probability: 1 } })
  })

  it('count texts that come to the same figure as one, in the one notation', () => {
    const read = readings(patternLattice('1[ -]3/8'), { unit: 'in' })
    expect(read.figures).toMatchObject([{ text: '1 3/8"', probability: 1, value: 34.925, kind: 'length' }])
    expect(read.figures[0]?.texts.map(({ text }) => text).sort()).toEqual(['1 3/8', '1-3/8'])
  })

  it('read words with slips in them where the strokes allow the word', () => {
    const read = readings(patternLattice('4 H[0]LES 9/16'), { unit: 'in' })
    expect(read.figures).toMatchObject([{ text: '4 HOLES 9/16"' }])
    expect(read.unparsed.likeliest?.text).toBe('4 H0LES 9/16')
  })

  it('read angles in radians, counts, and slopes without a value', () => {
    const one = (pattern: string) => readings(patternLattice(pattern), { unit: 'in' }).figures[0]
    expect(one("47° 30'")).toMatchObject({ kind: 'angle' })
    expect(one("47° 30'")?.value).toBeCloseTo((47.5 * Math.PI) / 180, 12)
    expect(one('6 HOLES')).toMatchObject({ kind: 'count', value: 6 })
    expect(one('1 IN 8')).toMatchObject({ kind: null, value: null })
  })

  it('refuse what is no probability', () => {
    const of = (...probabilities: number[]): Lattice => ({
      slots: [{ alternatives: probabilities.map((probability, i) => ({ text: `${i}`, probability })) }],
    })
    expect(() => readings(of(0.7, 0.7))).toThrow(RangeError)
    expect(() => readings(of(-0.1))).toThrow(RangeError)
    expect(() => readings(of(Number.NaN))).toThrow(RangeError)
  })
})

it('nothing that is dismissed by its looks is a figure, nor begins one', () => {
  const random = randomOf(7)
  const pick = <T>(all: readonly T[]): T => all[Math.floor(random() * all.length)] as T
  const parts = [
    ...'1238 /.\'"-ØR',
    ' ',
    '12',
    '3/8',
    '1/2',
    '.5',
    ' HOLES',
    ' DRILL',
    '±',
    '°',
    ' C.C.',
    '4-Ø',
    ' x ',
    '(',
    ')',
    '@ ',
  ]
  let figures = 0
  let dismissed = 0
  for (let i = 0; i < 30_000; i++) {
    let text = ''
    for (let n = 1 + Math.floor(random() * 6); n > 0; n--) text += pick(parts)
    const hopeless = isNoFigure(text) || [...text].some((_, end) => beginsNoFigure(text.slice(0, end + 1)))
    if (hopeless) dismissed += 1
    // What is let pass needs no check; of it, only so many are figures that there is something to dismiss wrongly.
    if (!hopeless && i % 4 > 0) continue
    if (isFigure(text) === null) continue
    figures += 1
    expect(hopeless, text).toBe(false)
  }
  expect(figures).toBeGreaterThan(300)
  expect(dismissed).toBeGreaterThan(5000)
})
