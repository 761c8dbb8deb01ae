import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { formatDrawnScale } from '../../../src/core/quantity/format/format-drawn-scale.ts'
import { parseDrawnScale } from '../../../src/core/quantity/parse/parse-drawn-scale.ts'

/** Common practice, no source: the scales of the architect's and the engineer's rule. */
const ON_RULES: readonly (readonly [string, number])[] = [
  [`3" = 1'-0"`, 1 / 4],
  [`1 1/2" = 1'-0"`, 1 / 8],
  [`1" = 1'-0"`, 1 / 12],
  [`3/4" = 1'-0"`, 1 / 16],
  [`3/8" = 1'-0"`, 1 / 32],
  [`3/16" = 1'-0"`, 1 / 64],
  [`6" = 1'-0"`, 1 / 2],
  ['full size', 1],
  ['2:1', 2],
]

describe('the scale of a drawing', () => {
  it.each(ON_RULES)('reads and writes %s', (text, scale) => {
    expect(parseDrawnScale(text, 'in')).toBeCloseTo(scale, 14)
    expect(formatDrawnScale(scale, 'in')).toBe(text)
  })

  it.each([
    ['1:4', 1 / 4],
    ['1:2.5', 1 / 2.5],
    ['1:50', 1 / 50],
    ['5:1', 5],
    ['1:1', 1],
  ] as const)('reads and writes %s where the job is in millimetres', (text, scale) => {
    expect(parseDrawnScale(text, 'mm')).toBeCloseTo(scale, 14)
    expect(formatDrawnScale(scale, 'mm')).toBe(text)
  })

  it.each([
    ['0.25', 0.25],
    ['.25', 0.25],
    ['1/4', 0.25],
    ['1/4 full size', 0.25],
    ['Half size', 0.5],
    ['half', 0.5],
    ['FULL SIZE', 1],
    ['Scale: 3" = 1 ft', 0.25],
    ['Scale 3" = 1\'', 0.25],
    ['3 in. to the foot', 0.25],
    ['1 1/2" to 1\'-0"', 0.125],
    ['SCALE 1 : 10', 0.1],
    ['10 mm = 100 mm', 0.1],
    ['3 = 12', 0.25],
  ] as const)('reads %s as a title block may have it', (text, scale) => {
    expect(parseDrawnScale(text, 'in')).toBeCloseTo(scale, 14)
  })

  it.each(['', 'about a quarter', '0', '1:0', '-1:4', '3" =', '1:2:3', 'halfway', '1/0'])(
    'says what to write where it can read nothing: “%s”',
    (text) => {
      expect(() => parseDrawnScale(text, 'in')).toThrow(/Write it as the title block has it/)
    },
  )

  it('writes a scale that is on no rule as a decimal', () => {
    expect(formatDrawnScale(0.24873, 'in')).toBe('0.2487')
    expect(formatDrawnScale(0.24873, 'mm')).toBe('0.2487')
  })

  it('reads back what it writes, to the figures that are written', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 100, noNaN: true }),
        fc.constantFrom('in', 'mm'),
        (scale, unit) => {
          const back = parseDrawnScale(formatDrawnScale(scale, unit as 'in' | 'mm'), unit as 'in' | 'mm')
          expect(Math.abs(back / scale - 1)).toBeLessThan(6e-4)
        },
      ),
    )
  })
})
