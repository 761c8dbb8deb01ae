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
    ['No. 20 GA', IN, `0.0375"`],
    ['14 3/8', { unit: 'mm' }, '365.125 mm'],
    ['36.5 cm', { unit: 'mm' }, '365 mm'],
    ['1/3', { unit: 'mm' }, '8.47 mm'],
  ])('%s with %j is %s', (text, format, expected) => {
    expect(formatLength(parseLength(text), format)).toBe(expected)
  })
})

// JCGM 100:2008, 7.2.6: U to two significant digits, the value to the same place; the numbers are ours.
describe('a measured value is a decimal to the place where its uncertainty ends', () => {
  it.each<[number, LengthFormat, string]>([
    [11.4934 * 25.4, { unit: 'in', uncertainty: 0.0751 * 25.4 }, `11.493"`],
    [14.381 * 25.4, { unit: 'in', uncertainty: 0.05 * 25.4 }, `14.381"`],
    [14.381 * 25.4, { unit: 'in', uncertainty: 0.5 * 25.4 }, `14.38"`],
    [14.381 * 25.4, { unit: 'in', uncertainty: 5 * 25.4 }, `14.4"`],
    [14.381 * 25.4, { unit: 'in', uncertainty: 0.0012 * 25.4 }, `14.3810"`],
    [14.375 * 25.4, { unit: 'in', uncertainty: 0.05 * 25.4 }, `14.375"`],
    [14.375 * 25.4, { unit: 'in', uncertainty: 0.05 * 25.4, denominator: 8, feet: true }, `14.375"`],
    [14.381 * 25.4, { unit: 'in', uncertainty: 0.0996 * 25.4 }, `14.38"`],
    [-14.381 * 25.4, { unit: 'in', uncertainty: 0.05 * 25.4 }, `−14.381"`],
    [365.3, { unit: 'mm', uncertainty: 0.5 }, '365.30 mm'],
    [365.3, { unit: 'mm', uncertainty: 12 }, '365 mm'],
    [1365.3, { unit: 'mm', uncertainty: 123 }, '1370 mm'],
    [-0.004, { unit: 'mm', uncertainty: 0.5 }, '0.00 mm'],
  ])('%d mm with %j is %s', (mm, format, expected) => {
    expect(formatLength(mm, format)).toBe(expected)
  })
})

describe('a value without uncertainty that is worked out is set exactly where it lies on a graduation or a short decimal', () => {
  it.each<[number, LengthFormat, string]>([
    [14.375 * 25.4, IN, `14 3/8"`],
    [26.375 * 25.4, { unit: 'in', feet: true }, `2'-2 3/8"`],
    [27.2919 * 25.4, IN, `27.2919"`],
    [27.2919 * 25.4, { unit: 'in', feet: true }, `27.2919"`],
    [27.29194 * 25.4, IN, `27.292"`],
    [11.99999 * 25.4, { unit: 'in', feet: true }, `12.000"`],
    [15.99961 * 25.4, IN, `16.000"`],
    [-14.381 * 25.4, IN, `−14.381"`],
    [0.00412 * 25.4, IN, `0.00412"`],
    [14.375 * 25.4, { unit: 'in', denominator: 2 }, `14.375"`],
    [0, IN, `0"`],
    [1e-12, IN, `0"`],
    [365.3, { unit: 'mm' }, '365.3 mm'],
    [365.123456, { unit: 'mm' }, '365.12 mm'],
    [12.125 + 1.25, { unit: 'mm' }, '13.375 mm'],
    [0.1 + 0.2, { unit: 'mm' }, '0.3 mm'],
    [100 / 3, { unit: 'mm' }, '33.33 mm'],
    [0.00123456, { unit: 'mm' }, '0.00123 mm'],
    [-365.3, { unit: 'mm' }, '−365.3 mm'],
  ])('%d mm with %j is %s', (mm, format, expected) => {
    expect(formatLength(mm, format)).toBe(expected)
  })
})

describe('an exact decimal stays whole', () => {
  it.each<[string, LengthFormat, string]>([
    ['2.3751', IN, `2.3751"`],
    ['16 B.W.G.', IN, `0.065"`],
    ['1\'-2.377"', IN, `1'-2.377"`],
    ['3/64', { unit: 'in', denominator: 16 }, `0.046875"`],
    ['365.1 mm', IN, `14.374"`],
    ['0.02 mm', IN, `0.000787"`],
  ])('%s with %j is %s', (text, format, expected) => {
    expect(formatLength(parseLength(text), format)).toBe(expected)
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

/** The decimal place of the second significant digit of an uncertainty, as it is rounded. */
const secondDigit = (u: number): number => 1 - Math.floor(Math.log10(Number(u.toPrecision(2))))

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

  it('to the place that is written, for measured values', () => {
    const measured = fc.integer({ min: -2e9, max: 2e9 }).map((n) => n / 1e5)
    const uncertainty = fc.option(fc.double({ min: 1e-4, max: 500, noNaN: true }), { nil: undefined })
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
          const two = u === undefined ? undefined : secondDigit(u / perUnit)
          const places = two ?? (unit === 'in' ? 3 : 2)
          expect(Math.abs(read - mm)).toBeLessThanOrEqual(0.5 * perUnit * 10 ** -places * (1 + 1e-6) + 1e-8)
        },
      ),
      { numRuns: 3000 },
    )
  })
})
