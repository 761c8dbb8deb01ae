import Fraction from 'fraction.js'

/** An exact angle, with the last graduation that it is written to. */
export interface Angle {
  readonly degrees: Fraction
  /** In degrees: 1/60 for whole minutes, 0.1 for one decimal, ... */
  readonly graduation: Fraction
}

/** An angle as a number of radians. */
export function angleInRadians(angle: Angle): number {
  return (angle.degrees.valueOf() * Math.PI) / 180
}

/**
 * An angle from exact degrees.
 *
 * @param graduation degrees; by default one over the value's denominator
 */
export function angleFromDegrees(degrees: Fraction, graduation?: Fraction): Angle {
  return { degrees, graduation: graduation ?? new Fraction(1n, degrees.d) }
}
