import fc from 'fast-check'
import Fraction from 'fraction.js'
import { describe, expect, it } from 'vitest'
import { formatLength, type LengthFormat } from '../../../../src/core/quantity/format/format-length.ts'
import {
  exactInches,
  lengthFromInches,
  lengthFromMillimetres,
  lengthIn,
} from '../../../../src/core/quantity/length.ts'
import { parseLength } from '../../../../src/core/quantity/parse/parse-length.ts'
import { ScantlingError } from '../../../../src/core/words/scantling-error.ts'

const IN: LengthFormat = { unit: 'in' }

describe('an exact length is written in pure notation', () => {
  it.each<[string, LengthFormat, string]>([
    ['14 3/8', IN, `14 3/8"`],
    ['6/16', IN, `3/8"`],
    ['0', IN, `0"`],
    ['1\'-2 3/8"', IN, `1'-2 3/8"`],
    ['14 3/8', { unit: 'in', feet: true }, `1'-2 3/8"`],
    ['1\'-2 3/8"', { unit: 'in', feet: false }, `14 3/8"`],
    ['11 3/8', { unit: 'in', feet: true }, `11 3/8"`],
    ['24', { unit: 'in', feet: true }, `2'-0"`],
    ['2.375', IN, `2 3/8"`],
    ['5/128', IN, `5/128"`],
    ['1/3', IN, `1/3"`],
    ['No. 20 GA', IN, `3/80"`],
    ['14 3/8', { unit: 'mm' }, '365.125 mm'],
    ['36.5 cm', { unit: 'mm' }, '365 mm'],
    ['1/3', { unit: 'mm' }, '8.466667 mm'],
  ])('%s with %j is %s', (text, format, expected) => {
    expect(formatLength(parseLength(text), format)).toBe(expected)
  })
})

describe('a value off its graduation never hides its remainder', () => {
  it.each<[number, LengthFormat, string]>([
    [14.381 * 25.4, IN, `14 3/8" + 0.006"`],
    [14.369 * 25.4, IN, `14 3/8" − 0.006"`],
    [14.3752 * 25.4, IN, `14 3/8" + 0.0002"`],
    [14.381 * 25.4, { unit: 'in', denominator: 8 }, `14 3/8" + 0.006"`],
    [14.381 * 25.4, { unit: 'in', uncertainty: 0.05 * 25.4 }, `14 3/8" + 0.006"`],
    [14.381 * 25.4, { unit: 'in', uncertainty: 0.5 * 25.4 }, `14 3/8" + 0.01"`],
    [14.381 * 25.4, { unit: 'in', uncertainty: 5 * 25.4 }, `14 3/8"`],
    [14.381 * 25.4, { unit: 'in', uncertainty: 0.0012 * 25.4 }, `14 3/8" + 0.0060"`],
    [11.998 * 25.4, { unit: 'in', feet: true }, `1'-0" − 0.002"`],
    [15.9995 * 25.4, IN, `16" − 0.001"`],
    [-14.381 * 25.4, IN, `−14 3/8" − 0.006"`],
    [-14.369 * 25.4, IN, `−14 3/8" + 0.006"`],
    [-0.004 * 25.4, IN, `0" − 0.004"`],
    [14.375 * 25.4, IN, `14 3/8"`],
    [0, IN, `0"`],
    [1e-12, IN, `0"`],
    [365.3, { unit: 'mm', uncertainty: 0.5 }, '365.30 mm'],
    [365.3, { unit: 'mm', uncertainty: 12 }, '365 mm'],
    [365.3, { unit: 'mm' }, '365.3 mm'],
    [-0.004, { unit: 'mm', uncertainty: 0.5 }, '0.00 mm'],
    [-365.3, { unit: 'mm' }, '−365.3 mm'],
  ])('%d mm with %j is %s', (mm, format, expected) => {
    expect(formatLength(mm, format)).toBe(expected)
  })

  it('shows the whole remainder of an exact decimal', () => {
    expect(formatLength(parseLength('2.3751'), IN)).toBe(`2 3/8" + 0.0001"`)
    expect(formatLength(parseLength('16 B.W.G.'), IN)).toBe(`1/16" + 0.0025"`)
  })

  it('rounds an exact fraction too when a coarser graduation is asked for', () => {
    expect(formatLength(parseLength('3/64'), { unit: 'in', denominator: 16 })).toBe(`1/16" − 0.015625"`)
  })
})

describe('what cannot be written is refused in words', () => {
  it.each([Number.NaN, Number.POSITIVE_INFINITY])('a length of %d', (mm) => {
    expect(() => formatLength(mm, IN)).toThrow(ScantlingError)
  })
  it.each([0, -8, 2.5])('an inch in %d parts', (denominator) => {
    expect(() => formatLength(1, { unit: 'in', denominator })).toThrow(/not divided into/)
  })
})

const inchFraction = fc
  .record({
    whole: fc.integer({ min: -600, max: 600 }),
    n: fc.nat(127),
    d: fc.constantFrom(1, 2, 4, 8, 16, 32, 64, 128, 3, 80),
  })
  .map(({ whole, n, d }) => new Fraction(whole).add(new Fraction(n % d, d)))

const decimal = fc
  .record({ n: fc.integer({ min: -99_999_999, max: 99_999_999 }), places: fc.nat(8) })
  .map(({ n, places }) => ({ value: new Fraction(BigInt(n), 10n ** BigInt(places)), places }))

describe('whatever is written is read again', () => {
  it('exactly, for fractions of an inch with and without feet', () => {
    fc.assert(
      fc.property(inchFraction, fc.boolean(), (inches, feet) => {
        const text = formatLength(lengthFromInches(inches), { unit: 'in', feet })
        const read = parseLength(text, { signed: true })
        expect(exactInches(read).toFraction()).toBe(inches.toFraction())
        expect(formatLength(read, IN)).toBe(text)
      }),
      { numRuns: 1000 },
    )
  })

  it('exactly, for decimals of an inch', () => {
    fc.assert(
      fc.property(decimal, fc.boolean(), ({ value, places }, feet) => {
        const length = lengthFromInches(value, new Fraction(1n, 10n ** BigInt(places)))
        const read = parseLength(formatLength(length, { unit: 'in', feet }), { signed: true })
        expect(exactInches(read).toFraction()).toBe(value.toFraction())
      }),
      { numRuns: 1000 },
    )
  })

  it('exactly, for decimals of a millimetre', () => {
    fc.assert(
      fc.property(decimal, ({ value }) => {
        const read = parseLength(formatLength(lengthFromMillimetres(value), { unit: 'mm' }), { signed: true })
        expect(read.mm.toFraction()).toBe(value.toFraction())
      }),
      { numRuns: 1000 },
    )
  })

  it('to the decimals that are written, for measured values', () => {
    const measured = fc.double({ min: -20_000, max: 20_000, noNaN: true })
    const uncertainty = fc.option(fc.double({ min: 1e-4, max: 50, noNaN: true }), { nil: undefined })
    const denominator = fc.constantFrom(undefined, 1, 8, 16, 64, 128)
    fc.assert(
      fc.property(
        measured,
        uncertainty,
        denominator,
        fc.constantFrom('in', 'mm'),
        fc.boolean(),
        (mm, u, d, unit, feet) => {
          const text = formatLength(mm, {
            unit,
            feet,
            ...(d !== undefined && { denominator: d }),
            ...(u !== undefined && { uncertainty: u }),
          })
          const read = lengthIn(parseLength(text, { signed: true }), 'mm')
          const perUnit = unit === 'in' ? 25.4 : 1
          const two = u === undefined ? undefined : Math.max(0, 1 - Math.floor(Math.log10(u / perUnit)))
          const places = Math.min(6, two ?? (unit === 'in' ? 3 : 6))
          expect(Math.abs(read - mm)).toBeLessThanOrEqual(0.5 * perUnit * 10 ** -places * (1 + 1e-6) + 1e-8)
        },
      ),
      { numRuns: 3000 },
    )
  })
})
