import Fraction from 'fraction.js'
import { CoreError } from '../../words/core-error.ts'
import { reason } from '../../words/core-words.ts'
import { exactInches, type Length, type LengthUnit, MM_PER_INCH } from '../length.ts'
import {
  exactPlaces,
  fractionOf,
  MINUS,
  mixedNumber,
  shortPlaces,
  significantPlaces,
  toPlaces,
  withoutIdleZeros,
} from './decimals.ts'
import { toUncertainty } from './rounding.ts'

/** How a length is written. */
export interface LengthFormat {
  readonly unit: LengthUnit
  /** Finest graduation in inches: 64 for sixty-fourths, which is the default. Exact fractions finer than that stay. */
  readonly denominator?: number
  /** Whether an exact length is written in decimals, to a ten-thousandth of an inch, in place of fractions. */
  readonly decimals?: boolean
  /** Whether to write feet from one foot up; by default as the length was written. */
  readonly feet?: boolean
  /** Expanded uncertainty, millimetres: a measured value with one is a decimal to the place where it ends. */
  readonly uncertainty?: number
}

const DEFAULT_DENOMINATOR = 64
/** Decimals of an exact fraction that is wanted in decimals: enough for a sixty-fourth of an inch. */
const OF_FRACTIONS = 4
/** Decimals of a value that none write exactly: a thousandth of an inch, a hundredth of a millimetre. */
const ENOUGH: Record<LengthUnit, number> = { in: 3, mm: 2 }
/** A measured value this near to a graduation, as a share of it, is on it: the rest is the rounding of the computer. */
const ON_GRADUATION = 1e-9

function isLength(value: Length | number): value is Length {
  return typeof value === 'object'
}

/** Inches after feet always have their whole number, so that 2'-0 5/8" can't be taken for a fraction of a foot. */
const withWhole = (n: bigint, d: bigint): string =>
  n > 0n && n < d ? `0 ${mixedNumber(n, d)}` : mixedNumber(n, d)

function inFraction({ n, d }: Fraction, feet: boolean): string {
  if (!feet || n < 12n * d) return `${mixedNumber(n, d)}"`
  return `${n / (12n * d)}'-${withWhole(n % (12n * d), d)}"`
}

/**
 * A number of parts of an inch as a figure: `11 1/2"`, `2'-0 5/8"`, in decimals `11.5"`.
 * @param parts a whole number of them, none negative
 */
export function formatParts(
  parts: number,
  denominator: number,
  { feet = false, decimals = false }: { feet?: boolean; decimals?: boolean },
): string {
  const inches = new Fraction(BigInt(parts), BigInt(denominator))
  return decimals ? inDecimals(inches, decimalsOfFraction(inches), feet) : inFraction(inches, feet)
}

function inDecimals(inches: Fraction, places: number, feet: boolean): string {
  const text = toPlaces(inches, places)
  const foot = new Fraction(12n, 1n)
  const rounded = new Fraction(text)
  if (!feet || rounded.compare(foot) < 0) return `${text}"`
  const whole = rounded.div(foot).floor()
  return `${whole.n}'-${toPlaces(rounded.sub(whole.mul(foot)), places)}"`
}

function nearest(inches: Fraction, denominator: number): Fraction {
  const parts = BigInt(denominator)
  const { n, d } = inches
  return new Fraction((2n * n * parts + d) / (2n * d), parts)
}

const decimalsOfFraction = (inches: Fraction): number =>
  Math.min(exactPlaces(inches) ?? OF_FRACTIONS, OF_FRACTIONS)

function inInches(value: Length | number, format: LengthFormat): string {
  const written = isLength(value) ? value : undefined
  const signed = isLength(value) ? exactInches(value) : fractionOf(value).div(MM_PER_INCH)
  const feet = format.feet ?? written?.feet ?? false
  const inches = signed.abs()
  const pure = written?.fraction === true && format.denominator === undefined
  const graduation = pure ? inches : nearest(inches, format.denominator ?? DEFAULT_DENOMINATOR)
  const off = inches.sub(graduation).abs()
  const noise = written === undefined && off.valueOf() <= ON_GRADUATION * Math.max(1, inches.valueOf())
  const sign = (text: string): string => `${signed.s < 0n && /[1-9]/.test(text) ? MINUS : ''}${text}`
  const onGraduation = off.n === 0n || noise
  if (onGraduation && format.decimals !== true) return sign(inFraction(graduation, feet))
  const places = onGraduation
    ? decimalsOfFraction(graduation)
    : ((written === undefined ? shortPlaces(inches.valueOf()) : exactPlaces(inches)) ??
      significantPlaces(inches.valueOf(), ENOUGH.in))
  // Feet and decimals stand together only where a figure was written so.
  return sign(inDecimals(inches, places, feet && written !== undefined))
}

function inMillimetres(value: Length | number): string {
  const mm = isLength(value) ? value.mm : fractionOf(value)
  const exact = isLength(value) ? exactPlaces(mm) : shortPlaces(value)
  const text = withoutIdleZeros(toPlaces(mm, exact ?? significantPlaces(Math.abs(mm.valueOf()), ENOUGH.mm)))
  return `${mm.s < 0n && /[1-9]/.test(text) ? MINUS : ''}${text} mm`
}

/** A measured value: thousands are written for one table, and exact fractions of doubles are slow. */
const measured = (mm: number, uncertainty: number, unit: LengthUnit): string =>
  unit === 'in' ? `${toUncertainty(mm / 25.4, uncertainty / 25.4)}"` : `${toUncertainty(mm, uncertainty)} mm`

/**
 * Writes a length. An exact one in shop notation: `14 3/8"`, `1'-2 3/8"`, `2.377"`, `365.1 mm`. A measured one with an
 * uncertainty as a decimal to the place where its uncertainty ends, given to two significant figures (JCGM 100:2008,
 * 7.2.6): `14.381"`, never as a fraction and a remainder, which the shop reads as a tolerance. A measured one without an
 * uncertainty, as it is worked out from exact figures, is set like an exact one where it lies on a graduation or four
 * decimals write it, otherwise to a thousandth of an inch or a hundredth of a millimetre.
 *
 * `parseLength` reads everything that this writes: exactly the value of an exact length, but for one that no decimals
 * write (a millimetre in inches), and otherwise the value to the decimals that are written.
 *
 * @param value an exact length, or a measured one in millimetres
 * @throws ScantlingError for a number that is not finite, or a denominator that is no whole number of parts
 */
export function formatLength(value: Length | number, format: LengthFormat): string {
  if (!isLength(value) && !Number.isFinite(value)) {
    throw new CoreError(reason('notation.unwritable-length', { value: String(value) }))
  }
  const { denominator, uncertainty, unit } = format
  if (denominator !== undefined && !(Number.isSafeInteger(denominator) && denominator > 0)) {
    throw new CoreError(reason('notation.unwritable-graduation', { denominator }))
  }
  if (!isLength(value) && uncertainty !== undefined && uncertainty > 0)
    return measured(value, uncertainty, unit)
  return unit === 'in' ? inInches(value, format) : inMillimetres(value)
}
