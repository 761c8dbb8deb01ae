import Fraction from 'fraction.js'
import { toUncertainty } from './rounding.ts'

/** The minus that is written; any dash is read. */
export const MINUS = '\u2212'

/** Finest decimal written: a millionth of the unit. */
const MOST_PLACES = 6

/** Decimals of a measured value that is uncertain by nothing. */
const ENOUGH = 3

/** Significant digits that a value is never written below, so that a small one is not rounded away. */
const FEWEST_DIGITS = 3

/** Decimal places of a value that is rounded to so many, or to three significant digits where that takes more. */
export function significantPlaces(value: number, places: number): number {
  if (!(value > 0)) return places
  return Math.min(MOST_PLACES, Math.max(places, FEWEST_DIGITS - 1 - Math.floor(Math.log10(value))))
}

/** A decimal without its idle zeros: `365.100` becomes `365.1`. */
export function withoutIdleZeros(decimal: string): string {
  return decimal.includes('.') ? decimal.replace(/\.?0+$/, '') : decimal
}

/** Decimal places that write a fraction exactly; undefined when none do, as for 1/3. */
export function exactPlaces(value: Fraction): number | undefined {
  let d = value.d
  let twos = 0
  let fives = 0
  for (; d % 2n === 0n; d /= 2n) twos += 1
  for (; d % 5n === 0n; d /= 5n) fives += 1
  return d === 1n ? Math.max(twos, fives) : undefined
}

/** Decimals of a value that was worked out from exact ones; more are written for a figure only. */
const MOST_OF_SUMS = 4
/** What the sums of a computer leave of an exact decimal, as a share of it. */
const OF_SUMS = 1e-12

/** The fewest decimal places, four at most, that write a number but for the rounding of sums; undefined when more. */
export function shortPlaces(value: number): number | undefined {
  const rounding = OF_SUMS * Math.max(1, Math.abs(value))
  for (let places = 0; places <= MOST_OF_SUMS; places++) {
    const scale = 10 ** places
    if (Math.abs(Math.round(value * scale) / scale - value) <= rounding) return places
  }
  return undefined
}

/** The size of a fraction to a number of decimal places, without sign; halves are rounded up. */
export function toPlaces(value: Fraction, places: number): string {
  const scale = 10n ** BigInt(places)
  const scaled = (2n * value.n * scale + value.d) / (2n * value.d)
  const digits = scaled.toString().padStart(places + 1, '0')
  return places === 0 ? digits : `${digits.slice(0, -places)}.${digits.slice(-places)}`
}

/** A finite double as the exact fraction that it stands for. */
export function fractionOf(value: number): Fraction {
  let scaled = value
  let halvings = 0
  while (!Number.isInteger(scaled)) {
    scaled *= 2
    halvings += 1
  }
  return new Fraction(BigInt(scaled), 1n << BigInt(halvings))
}

/** Whole number and fraction of n / d in lowest terms, without sign: `14 3/8`, `3/8`, `14`. */
export function mixedNumber(n: bigint, d: bigint): string {
  const whole = n / d
  const rest = n % d
  if (rest === 0n) return `${whole}`
  return whole === 0n ? `${rest}/${d}` : `${whole} ${rest}/${d}`
}

/**
 * A measured value in decimals: to the place where its uncertainty ends (JCGM 100:2008, 7.2.6); where there is none, to
 * a thousandth without idle zeros.
 */
export function measuredDecimal(value: number, uncertainty: number | undefined): string {
  if (uncertainty !== undefined && uncertainty > 0) return toUncertainty(value, uncertainty)
  const places = significantPlaces(Math.abs(value), ENOUGH)
  const text = withoutIdleZeros(toPlaces(fractionOf(value), places))
  return value < 0 && /[1-9]/.test(text) ? `${MINUS}${text}` : text
}
