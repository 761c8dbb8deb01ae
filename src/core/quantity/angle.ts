import Fraction from 'fraction.js'
import { degrees, type Radians, toRadians } from '../geometry/angle-units.ts'

/** An exact angle, with the last graduation that it is written to. */
export interface Angle {
  readonly degrees: Fraction
  /** In degrees: 1/60 for whole minutes, 0.1 for one decimal, ... */
  readonly graduation: Fraction
}

/** An angle as a number of radians. */
export const angleInRadians = (angle: Angle): Radians => toRadians(degrees(angle.degrees.valueOf()))

/**
 * An angle from exact degrees.
 *
 * @param graduation degrees; by default one over the value's denominator
 */
export function angleFromDegrees(value: Fraction, graduation?: Fraction): Angle {
  return { degrees: value, graduation: graduation ?? new Fraction(1n, value.d) }
}
