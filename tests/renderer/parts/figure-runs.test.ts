import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { figureRuns, plainRun } from '../../../src/renderer/parts/figure-runs.ts'

const joined = (text: string): string => figureRuns(text).map(plainRun).join('')

describe('setting a figure', () => {
  it('stacks the fraction after its whole number and leaves feet, marks and what follows in the line', () => {
    expect(figureRuns(`1'-2 3/8" − 0.007" ± 0.075"`)).toEqual([
      { text: `1'-` },
      { whole: '2', numerator: '3', denominator: '8' },
      { text: '" − 0.007" ± 0.075"' },
    ])
  })

  it('stacks a fraction without a whole number, after a letter and in a tolerance', () => {
    expect(figureRuns('R 3/16')).toEqual([{ text: 'R ' }, { numerator: '3', denominator: '16' }])
    expect(figureRuns('14 3/8" (tolerance ±1/32")')).toEqual([
      { whole: '14', numerator: '3', denominator: '8' },
      { text: '" (tolerance ±' },
      { numerator: '1', denominator: '32' },
      { text: '")' },
    ])
  })

  it.each([`47° 30'`, '365.1 mm', '8', '—', '12"', 'No. 16 GA', '63.12 sq in ± 0.39 sq in'])(
    'has nothing to stack in %s',
    (text) => {
      expect(figureRuns(text)).toEqual([{ text }])
    },
  )

  it.each(['11/12/1926', '2.5/8', 'A1/2', '1/2.5', '1//2', '3/'])('takes %s for no fraction', (text) => {
    expect(figureRuns(text)).toEqual([{ text }])
  })

  it('leaves a whole number in the line when more than a blank stands between', () => {
    expect(figureRuns('14-3/8"')).toEqual([
      { text: '14-' },
      { numerator: '3', denominator: '8' },
      { text: '"' },
    ])
    expect(joined('14  3/8')).toBe('14  3/8')
  })

  it('says nothing of nothing', () => {
    expect(figureRuns('')).toEqual([])
  })

  it('never loses a character of a figure', () => {
    const piece = fc.constantFrom(
      ...'0123456789',
      '/',
      ' ',
      '.',
      "'",
      '"',
      '-',
      '−',
      '±',
      '°',
      'R',
      'Ø',
      '⅜',
      '⁄',
    )
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 24 }), (pieces) => {
        expect(joined(pieces.join(''))).toBe(pieces.join(''))
      }),
      { numRuns: 2000 },
    )
    fc.assert(
      fc.property(fc.string(), (text) => {
        expect(joined(text)).toBe(text)
      }),
    )
  })
})
