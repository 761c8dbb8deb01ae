import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { formatArea } from '../../../src/core/quantity/format/format-area.ts'
import { formatCount } from '../../../src/core/quantity/format/format-count.ts'
import { parseArea } from '../../../src/core/quantity/parse/parse-area.ts'
import { parseCount } from '../../../src/core/quantity/parse/parse-count.ts'
import { ScantlingError } from '../../../src/core/words/scantling-error.ts'
import { stoppingPlace } from './stopping-place.ts'

describe('an area', () => {
  it.each([
    [8000, 'mm', undefined, '8000 mm²'],
    [8000, 'in', undefined, '12.4 sq in'],
    [8000, 'in', 645.16, '12.4 sq in'],
    [8000.4, 'mm', 250, '8000 mm²'],
    [645.16, 'in', undefined, '1 sq in'],
    [0, 'in', undefined, '0 sq in'],
  ] as const)('of %d mm² in %s with U %s is written %4$s', (mm2, unit, uncertainty, expected) => {
    expect(formatArea(mm2, { unit, ...(uncertainty !== undefined && { uncertainty }) })).toBe(expected)
  })

  it.each([
    ['1 sq in', '16129/25'],
    ['12.4 sq. ins.', '999998/125'],
    ['1/2 square inch', '16129/50'],
    ['1 in²', '16129/25'],
    ['8000 mm²', '8000'],
    ['80 cm²', '8000'],
    ['1 sq ft', '2322576/25'],
  ])('%j is %s mm² exactly', (text, mm2) => {
    expect(parseArea(text).mm2.toFraction()).toBe(mm2)
  })

  it.each([
    ['', 0],
    ['12.4', 4],
    ['12.4 in', 5],
    ['12.4 sq', 7],
    ['12 38 sq in', 3],
    ['12.4 sq in 3', 11],
    ['12.4 acres', 5],
  ])('%j is refused at %i', (text, at) => {
    expect(stoppingPlace(() => parseArea(text))?.at).toBe(at)
  })

  it('is read again as it was written', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e9 }), fc.constantFrom('in', 'mm'), (n, unit) => {
        const mm2 = n / 1e5
        const per = unit === 'in' ? 645.16 : 1
        const read = parseArea(formatArea(mm2, { unit })).mm2.valueOf()
        expect(Math.abs(read - mm2)).toBeLessThanOrEqual(0.5e-3 * per * (1 + 1e-6) + 1e-8)
      }),
    )
  })
})

describe('a count', () => {
  it.each([
    ['4', 4],
    ['4 HOLES', 4],
    ['1 hole', 1],
    ['6 PLACES', 6],
    ['0', 0],
  ])('%j is %i', (text, count) => {
    expect(parseCount(text)).toBe(count)
  })

  it.each([
    ['', 0],
    ['four', 0],
    ['4.5', 0],
    ['4 3/8', 2],
    ['4 bolts', 2],
    ['-4', 0],
    ['99999999999999999', 0],
  ])('%j is refused at %i', (text, at) => {
    expect(stoppingPlace(() => parseCount(text))?.at).toBe(at)
  })

  it('is written whole, and one that was worked out keeps its decimals', () => {
    expect(formatCount(12)).toBe('12')
    expect(formatCount(12.25)).toBe('12.25')
    expect(formatCount(12.25, 0.5)).toBe('12.25')
    expect(formatCount(12.25, 5)).toBe('12.3')
    expect(() => formatCount(Number.NaN)).toThrow(ScantlingError)
  })
})
