import fc from 'fast-check'
import Fraction from 'fraction.js'
import { describe, expect, it } from 'vitest'
import { degrees, type Radians, radians, toRadians } from '../../../src/core/geometry/angle-units.ts'
import { angleFromDegrees, angleInRadians } from '../../../src/core/quantity/angle.ts'
import { formatAngle } from '../../../src/core/quantity/format/format-angle.ts'
import { NotationError } from '../../../src/core/quantity/notation/notation-error.ts'
import { parseAngle } from '../../../src/core/quantity/parse/parse-angle.ts'
import { ScantlingError } from '../../../src/core/words/scantling-error.ts'
import { stoppingPlace } from './stopping-place.ts'

const inRadians = (value: number): Radians => toRadians(degrees(value))

describe('an angle is read exactly', () => {
  it.each([
    ["47° 30'", '95/2', '1/60'],
    ['47°30\'15"', '11401/240', '1/3600'],
    ['47° 30′ 15″', '11401/240', '1/3600'],
    ["47°-30'", '95/2', '1/60'],
    ['47.5°', '95/2', '1/10'],
    ['47 1/2°', '95/2', '1/2'],
    ['47½°', '95/2', '1/2'],
    ['47 deg', '47', '1'],
    ['47 deg. 30 min.', '95/2', '1/60'],
    ["47º 30.5'", '5701/120', '1/600'],
    ['47° 0\' 1"', '169201/3600', '1/3600'],
    ['47° 15"', '11281/240', '1/3600'],
    ["30'", '1/2', '1/60'],
    ['0°', '0', '1'],
    ['360°', '360', '1'],
  ])('%j is %s degrees, to %s', (text, degrees, graduation) => {
    expect(parseAngle(text).degrees.toFraction()).toBe(degrees)
    expect(parseAngle(text).graduation.toFraction()).toBe(graduation)
  })

  it('is carried in radians', () => {
    expect(angleInRadians(parseAngle('180°'))).toBe(Math.PI)
    expect(angleInRadians(parseAngle('−90°', { signed: true }))).toBe(-Math.PI / 2)
  })

  it.each([
    ['', 0, /Nothing is written/],
    ['47', 2, /write ° or deg/],
    ['47° 30', 4, /need their mark/],
    ["47° 60'", 4, /fewer than 60/],
    ["47.5° 30'", 0, /Only the last part/],
    ['47° 30" 15\'', 8, /need their mark/],
    ['47° 30° ', 4, /need their mark/],
    ['47 rad', 3, /write ° or deg/],
    ['-47°', 0, /never less/],
    ['47°°', 3, /Nothing may follow/],
    ['about 47°', 0, /Expected an angle/],
  ])('%j stops at %i', (text, at, advice) => {
    const error = stoppingPlace(() => parseAngle(text))
    expect(error?.at).toBe(at)
    expect(error?.message).toMatch(advice)
  })

  it('or refused with a place within the text, whatever the text', () => {
    const signs = fc.array(fc.constantFrom(...`0123456789 /-.°'"½`, 'deg', 'min', '\n'), { maxLength: 12 })
    const texts = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 30 }),
      signs.map((s) => s.join('')),
    )
    fc.assert(
      fc.property(texts, (text) => {
        const error = stoppingPlace(() => parseAngle(text, { signed: true }))
        if (error === undefined) return
        expect(error).toBeInstanceOf(NotationError)
        expect(error.at).toBeGreaterThanOrEqual(0)
        expect(error.at).toBeLessThanOrEqual(text.length)
      }),
      { numRuns: 4000 },
    )
  })
})

describe('an angle is written', () => {
  it.each([
    ["47° 30'", "47° 30'"],
    ['47.5°', "47° 30'"],
    ['47° 15"', '47° 0\' 15"'],
    ['47.12345°', '47.12345°'],
    ['47 1/7°', '47 1/7°'],
    ['47°', '47°'],
  ])('%j exactly, as %s', (text, expected) => {
    expect(formatAngle(parseAngle(text))).toBe(expected)
  })

  it.each([
    [47.5, undefined, "47° 30'"],
    [47.5, 0.5, '47.50°'],
    [47.52, 0.03, '47.520°'],
    [47.5211111111, undefined, '47° 31\' 16"'],
    [47.52113, undefined, '47.521°'],
    [-47.5, undefined, "−47° 30'"],
    [-1e-13, undefined, '0°'],
    [59.99999999999999, undefined, '60°'],
  ])('%d° measured with U %s° as %s', (degrees, u, expected) => {
    expect(formatAngle(inRadians(degrees), u === undefined ? {} : { uncertainty: inRadians(u) })).toBe(
      expected,
    )
  })

  it('never when it is no number', () => {
    expect(() => formatAngle(radians(Number.NaN))).toThrow(ScantlingError)
  })

  it('so that an exact one is read again exactly', () => {
    const degrees = fc
      .record({
        n: fc.integer({ min: -2_000_000, max: 2_000_000 }),
        d: fc.constantFrom(1, 2, 60, 3600, 7, 10, 1000, 7200),
      })
      .map(({ n, d }) => new Fraction(n, d))
    fc.assert(
      fc.property(degrees, (value) => {
        const read = parseAngle(formatAngle(angleFromDegrees(value)), { signed: true })
        expect(read.degrees.toFraction()).toBe(value.toFraction())
      }),
      { numRuns: 1000 },
    )
  })

  it('so that a measured one is read again to the decimals written', () => {
    const u = fc.option(fc.double({ min: 1e-5, max: 5, noNaN: true }), { nil: undefined })
    fc.assert(
      fc.property(
        fc.integer({ min: -18e6, max: 18e6 }).map((n) => n / 1e5),
        u,
        (degrees, uncertainty) => {
          const text = formatAngle(
            inRadians(degrees),
            uncertainty === undefined ? {} : { uncertainty: inRadians(uncertainty) },
          )
          const read = parseAngle(text, { signed: true }).degrees.valueOf()
          const places =
            uncertainty === undefined
              ? 3
              : Math.max(0, 1 - Math.floor(Math.log10(Number(uncertainty.toPrecision(2)))))
          expect(Math.abs(read - degrees)).toBeLessThanOrEqual(0.5 * 10 ** -places * (1 + 1e-6) + 1e-9)
        },
      ),
      { numRuns: 1000 },
    )
  })
})
