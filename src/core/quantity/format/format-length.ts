import Fraction from 'fraction.js'
import { CoreError } from '../../words/core-error.ts'
import { reason } from '../../words/core-words.ts'
import { exactInches, type Length, type LengthUnit, MM_PER_INCH } from '../length.ts'
import {
  decimalPlacesFor,
  exactPlaces,
  fractionOf,
  MINUS,
  MOST_PLACES,
  mixedNumber,
  toPlaces,
  withoutIdleZeros,
} from './decimals.ts'

/** How a length is written. */
export interface LengthFormat {
  readonly unit: LengthUnit
  /** Finest graduation in inches: 64 for sixty-fourths, which is the default. Exact fractions finer than that stay. */
  readonly denominator?: number
  /** Whether to write feet from one foot up; by default as the length was written. */
  readonly feet?: boolean
  /** Expanded uncertainty, millimetres: decides how many decimals are written. */
  readonly uncertainty?: number
}

const ZERO = new Fraction(0n, 1n)
const DEFAULT_DENOMINATOR = 64
const REMAINDER_PLACES = 3
/** A measured value this near to a graduation, as a share of it, is on it: the rest is the rounding of the computer. */
const ON_GRADUATION = 1e-9

function isLength(value: Length | number): value is Length {
  return typeof value === 'object'
}

/** Inches after feet always have their whole number, so that 2'-0 5/8" can't be taken for a fraction of a foot. */
const withWhole = (n: bigint, d: bigint): string =>
  n > 0n && n < d ? `0 ${mixedNumber(n, d)}` : mixedNumber(n, d)

function onGraduation(inches: { readonly n: bigint; readonly d: bigint }, feet: boolean): string {
  const { n, d } = inches
  if (!feet || n < 12n * d) return `${mixedNumber(n, d)}"`
  return `${n / (12n * d)}'-${withWhole(n % (12n * d), d)}"`
}

/** Decimal of the remainder, inches: never all zeros, unless the uncertainty drowns it, and then undefined. */
function remainderText(rest: Fraction, exact: boolean, uncertainty: number | undefined): string | undefined {
  const worth = decimalPlacesFor((uncertainty ?? 0) / 25.4)
  if (worth !== undefined) {
    const text = toPlaces(rest, worth)
    return /[1-9]/.test(text) ? text : undefined
  }
  let places = (exact ? exactPlaces(rest) : undefined) ?? REMAINDER_PLACES
  let text = toPlaces(rest, places)
  while (!/[1-9]/.test(text)) {
    places += 1
    text = toPlaces(rest, places)
  }
  return text
}

function nearest(inches: Fraction, denominator: number): Fraction {
  const parts = BigInt(denominator)
  const { n, d } = inches
  return new Fraction((2n * n * parts + d) / (2n * d), parts)
}

const commonDivisor = (a: number, b: number): number => (b === 0 ? a : commonDivisor(b, a % b))

/**
 * A measured value the quick way, in doubles: thousands are written for one table, and exact fractions of doubles
 * are slow. Undefined where doubles can't count the parts, or there is no uncertainty to go by.
 */
function measuredInInches(mm: number, format: LengthFormat): string | undefined {
  const inches = Math.abs(mm) / 25.4
  const denominator = format.denominator ?? DEFAULT_DENOMINATOR
  const parts = Math.round(inches * denominator)
  const worth = decimalPlacesFor((format.uncertainty ?? 0) / 25.4)
  if (worth === undefined || !(parts < 2 ** 40)) return undefined
  const divisor = commonDivisor(parts, denominator)
  const whole = { n: BigInt(parts / divisor), d: BigInt(denominator / divisor) }
  const rest = inches - parts / denominator
  const text = Math.abs(rest).toFixed(worth)
  const noise = Math.abs(rest) <= ON_GRADUATION * Math.max(1, inches)
  const remainder = noise || !/[1-9]/.test(text) ? undefined : text
  return withRemainder(whole, format.feet ?? false, remainder, mm < 0, rest > 0)
}

/** Sign, graduation and remainder put together. A value that is all remainder has no sign of its own: `0" − 0.004"`. */
function withRemainder(
  whole: { readonly n: bigint; readonly d: bigint },
  feet: boolean,
  remainder: string | undefined,
  negative: boolean,
  over: boolean,
): string {
  const lead = `${negative && whole.n > 0n ? MINUS : ''}${onGraduation(whole, feet)}`
  return remainder === undefined ? lead : `${lead} ${over !== negative ? '+' : MINUS} ${remainder}"`
}

function inInches(value: Length | number, format: LengthFormat): string {
  if (!isLength(value)) {
    const quick = measuredInInches(value, format)
    if (quick !== undefined) return quick
  }
  const written = isLength(value) ? value : undefined
  const signed = isLength(value) ? exactInches(value) : fractionOf(value).div(MM_PER_INCH)
  const feet = format.feet ?? written?.feet ?? false
  const inches = signed.abs()
  const pure = written?.fraction === true && format.denominator === undefined
  const whole = pure ? inches : nearest(inches, format.denominator ?? DEFAULT_DENOMINATOR)
  const difference = inches.sub(whole)
  const rest = difference.abs()
  const noise = written === undefined && rest.valueOf() <= ON_GRADUATION * Math.max(1, inches.valueOf())
  const remainder =
    rest.n === 0n || noise ? undefined : remainderText(rest, written !== undefined, format.uncertainty)
  return withRemainder(whole, feet, remainder, signed.s < 0n, difference.compare(ZERO) > 0)
}

function inMillimetres(value: Length | number, format: LengthFormat): string {
  const mm = isLength(value) ? value.mm : fractionOf(value)
  const exact = isLength(value) ? exactPlaces(mm) : undefined
  const worth = decimalPlacesFor(format.uncertainty)
  const text =
    worth === undefined ? withoutIdleZeros(toPlaces(mm, exact ?? MOST_PLACES)) : toPlaces(mm, worth)
  return `${mm.s < 0n && /[1-9]/.test(text) ? MINUS : ''}${text} mm`
}

/**
 * Writes a length in shop notation: `14 3/8"`, `1'-2 3/8"`, `365.1 mm`.
 *
 * In inches a value is written to the nearest graduation, and what is left over is written beside it: `14 3/8" + 0.006"`.
 * `parseLength` reads everything that this writes: exactly the value of an exact length, otherwise the value to the
 * decimals that are written. An exact length that no decimals write (one third of an inch in millimetres) is
 * written to a millionth.
 *
 * @param value an exact length, or a measured one in millimetres
 * @throws ScantlingError for a number that is not finite, or a denominator that is no whole number of parts
 */
export function formatLength(value: Length | number, format: LengthFormat): string {
  if (!isLength(value) && !Number.isFinite(value)) {
    throw new CoreError(reason('notation.unwritable-length', { value: String(value) }))
  }
  const { denominator } = format
  if (denominator !== undefined && !(Number.isSafeInteger(denominator) && denominator > 0)) {
    throw new CoreError(reason('notation.unwritable-graduation', { denominator }))
  }
  return format.unit === 'in' ? inInches(value, format) : inMillimetres(value, format)
}
