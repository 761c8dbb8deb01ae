import Fraction from 'fraction.js'

/** The system that a length is written in: inches (and feet), or millimetres. */
export type LengthUnit = 'in' | 'mm'

/** An exact length, with what is known of how it was written. */
export interface Length {
  /** The value in millimetres, exact. */
  readonly mm: Fraction
  /** The last graduation it is written to, in millimetres: that of 1/16 in, 0.1 mm, ... */
  readonly graduation: Fraction
  readonly system: LengthUnit
  /** Whether it was written with feet. */
  readonly feet: boolean
  /** Whether it stands as a fraction or whole number of inches, so that 3/80 is written back as such. */
  readonly fraction?: boolean
}

/** Millimetres in an inch: 25.4 exactly, by the international agreement of 1959. */
export const MM_PER_INCH = new Fraction(127n, 5n)

/** A length as a number in the unit asked for. */
export function lengthIn(length: Length, unit: LengthUnit): number {
  const { s, n, d } = length.mm
  return unit === 'mm' ? Number(s * n) / Number(d) : Number(s * n * 5n) / Number(d * 127n)
}

/** In how many parts the last fraction divides the inch, 1 for whole inches; null when not written so. */
export function partsOfAnInch({ system, fraction, graduation }: Length): number | null {
  if (system !== 'in' || fraction !== true) return null
  const parts = 25.4 / Number(graduation)
  return Math.abs(parts - Math.round(parts)) < 1e-9 ? Math.round(parts) : null
}

/** The exact number of inches in a length. */
export function exactInches(length: Length): Fraction {
  return length.mm.div(MM_PER_INCH)
}

/**
 * A length from exact inches.
 *
 * @param inches value, inches
 * @param graduation last graduation it is given to, inches; by default one over the value's denominator, and the
 *   length is then written as that fraction
 */
export function lengthFromInches(inches: Fraction, graduation?: Fraction): Length {
  const step = graduation ?? new Fraction(1n, inches.d)
  const fraction = graduation === undefined
  return {
    mm: inches.mul(MM_PER_INCH),
    graduation: step.mul(MM_PER_INCH),
    system: 'in',
    feet: false,
    fraction,
  }
}

/**
 * A length from exact millimetres.
 *
 * @param mm value, millimetres
 * @param graduation last graduation it is given to, millimetres; by default one over the value's denominator
 */
export function lengthFromMillimetres(mm: Fraction, graduation?: Fraction): Length {
  return { mm, graduation: graduation ?? new Fraction(1n, mm.d), system: 'mm', feet: false }
}
