import { describe, expect, it } from 'vitest'
import { parseFormula } from '../../../src/core/formula/formula.ts'
import { FormulaError } from '../../../src/core/formula/formula-error.ts'
import { ANGLE, AREA, LENGTH, NUMBER, type Units } from '../../../src/core/formula/formula-units.ts'
import { standardUncertainty } from '../../../src/core/uncertainty/covariance.ts'
import { FIRST_ORDER } from '../../../src/core/uncertainty/first-order.ts'
import { exact, measured, type Uncertain } from '../../../src/core/uncertainty/uncertain.ts'

const KINDS: Record<string, Units> = {
  drum: LENGTH,
  neck: LENGTH,
  sheet: LENGTH,
  opening: AREA,
  slope: ANGLE,
  holes: NUMBER,
}
const VALUES: Record<string, Uncertain> = {
  drum: exact(300),
  neck: exact(120),
  sheet: exact(1.5),
  opening: exact(1600),
  slope: exact(Math.PI / 6),
  holes: exact(8),
}
const unitsOf = (text: string): Units => parseFormula(text).units((name) => KINDS[name] ?? NUMBER)
function refusal(text: string): FormulaError | undefined {
  try {
    unitsOf(text)
    return undefined
  } catch (error) {
    if (error instanceof FormulaError) return error
    throw error
  }
}
const numberFrom = (text: string): number =>
  parseFormula(text).value((name) => VALUES[name] as Uncertain, FIRST_ORDER).value

describe('a formula over dimensions', () => {
  it.each([
    ['drum + neck', LENGTH, 420],
    ['pi * (drum - sheet)', LENGTH, Math.PI * 298.5],
    ['drum - neck - sheet', LENGTH, 178.5],
    ['drum / neck / 2', NUMBER, 1.25],
    ['-drum + 2 * neck', LENGTH, -60],
    ['drum^2 / 4 * pi', AREA, 22500 * Math.PI],
    ['-2^2 * neck', LENGTH, -480],
    ['2^3^2 * sheet', LENGTH, 768],
    ['sqrt(opening)', LENGTH, 40],
    ['sqrt(drum^2 + neck^2)', LENGTH, Math.hypot(300, 120)],
    ['cbrt(drum * drum * drum)', LENGTH, 300],
    ['hypot(drum, neck)', LENGTH, Math.hypot(300, 120)],
    ['abs(neck - drum)', LENGTH, 180],
    ['min(drum, neck)', LENGTH, 120],
    ['max(drum, neck, sheet)', LENGTH, 300],
    ['drum * sin(slope)', LENGTH, 150],
    ['drum * cos(2 * slope)', LENGTH, 150],
    ['neck * tan(45 deg)', LENGTH, 120],
    ['asin(neck / (2 * neck))', ANGLE, Math.PI / 6],
    ['acos(0.5)', ANGLE, Math.PI / 3],
    ['atan(1) + slope', ANGLE, Math.PI / 4 + Math.PI / 6],
    ['atan2(neck, neck)', ANGLE, Math.PI / 4],
    ['drum * slope', { length: 1, angle: 1 }, 50 * Math.PI],
    ['360 deg / holes', ANGLE, Math.PI / 4],
    ['2 pi', NUMBER, 2 * Math.PI],
  ] as [string, Units, number][])('%s', (text, units, value) => {
    expect(unitsOf(text)).toEqual(units)
    expect(numberFrom(text)).toBeCloseTo(value, 9)
  })

  it.each([
    ['drum + 5 mm', 305],
    ['drum + 5 in', 427],
    ['drum - 3/8 in', 300 - 9.525],
    ['3/8 in + drum', 309.525],
    ['(2 + 3/8) in', 60.325],
    ['(2 + 3/8) in + drum', 360.325],
    ['drum + 1 ft - 12 inch', 300],
    ['2 cm + 0.01 m', 30],
    ['drum - 2 * 1/16 in', 300 - 3.175],
    ['drum + 1in', 325.4],
  ] as [string, number][])('takes a number with a unit: %s', (text, value) => {
    expect(unitsOf(text)).toEqual(LENGTH)
    expect(numberFrom(text)).toBeCloseTo(value, 9)
  })

  it.each([
    ['drum + 1/16"', 300 + 25.4 / 16],
    [`2'-3" - drum`, 27 * 25.4 - 300],
    [`1'-2 3/8" / 2`, (14.375 * 25.4) / 2],
    [`1' 2 3/8" / 2`, (14.375 * 25.4) / 2],
    [`1′–2⅜″ - drum`, 14.375 * 25.4 - 300],
    ['drum - 2 * 1/16"', 300 - 25.4 / 8],
    ['drum − 3/8" × 2', 300 - 19.05],
    [`drum + 2' - 3/8" * 0`, 300 + 609.6],
    [`(2') - 3"`, 21 * 25.4],
    [`drum - 1'-0 1/2"`, 300 - 12.5 * 25.4],
    ['14 3/8" + 14⅜"', 28.75 * 25.4],
    [`3'' + 1.5'`, 21 * 25.4],
    [`neck * tan(45°)`, 120],
  ] as [string, number][])('takes the notation of the shop: %s', (text, value) => {
    expect(unitsOf(text)).toEqual(LENGTH)
    expect(numberFrom(text)).toBeCloseTo(value, 9)
  })

  it('asks for the unit of a number beside a length or an angle, and shows where it stands', () => {
    for (const [text, at, says] of [
      ['drum + 3', 7, /write the unit of 3, as in 3" or 3 mm/],
      ['3/8 - drum', 0, /write the unit of 3\/8/],
      ['slope + 30', 8, /write the unit of 30, as in 30° or 30 rad/],
    ] as const) {
      const error = refusal(text)
      expect(error?.place).toEqual({ text, at })
      expect(error?.message).toMatch(says)
      expect(error?.message).toContain(`at character ${at + 1}`)
    }
  })

  it('names each dimension it uses once', () => {
    expect(parseFormula('drum + neck * drum / drum').names).toEqual(['drum', 'neck'])
    expect(parseFormula('pi * 2 in').names).toEqual([])
  })

  it.each([
    ['drum + 3', /plus/],
    ['drum - opening', /minus/],
    ['sin(drum)', /needs an angle/],
    ['sin(2)', /needs an angle/],
    ['asin(drum)', /needs a plain number/],
    ['max(drum, opening)', /mixes units/],
    ['atan2(drum, opening)', /mixes units/],
    ['2 ^ drum', /exponent/],
    ['drum ^ holes', /exponent/],
    ['slope + 1', /mixes units/],
    ['hypot(drum, 1)', /mixes units/],
  ])('refuses mixed units: %s', (text, message) => {
    expect(() => unitsOf(text)).toThrow(FormulaError)
    expect(() => unitsOf(text)).toThrow(message)
  })

  it('keeps what two dimensions share: a difference of one dimension with itself is exactly nothing', () => {
    const drum = measured(300, 0.4, 'picking')
    const none = parseFormula('2 * drum - drum - drum').value(() => drum, FIRST_ORDER)
    expect(none.value).toBe(0)
    expect(standardUncertainty(none)).toBe(0)
  })
})
