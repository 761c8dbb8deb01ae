import Fraction from 'fraction.js'
import { type Degrees, degrees, type Radians, radians, toDegrees } from '../../geometry/angle-units.ts'
import { CoreError } from '../../words/core-error.ts'
import { reason } from '../../words/core-words.ts'
import type { Angle } from '../angle.ts'
import { exactPlaces, MINUS, measuredDecimal, mixedNumber, toPlaces } from './decimals.ts'

/** How an angle is written. */
export interface AngleFormat {
  /** Expanded uncertainty: decides how many decimals are written. */
  readonly uncertainty?: Radians
}

/** By one factor, so that a value and its uncertainty are rounded alike wherever they are shown. */
const inDegrees = (angle: Radians): Degrees => degrees(angle * toDegrees(radians(1)))

/** A measured angle this near to whole seconds, in seconds, is on them: the rest is the rounding of the computer. */
const ON_A_SECOND = 1e-6

function inSexagesimal(seconds: bigint): string {
  const d = seconds / 3600n
  const m = (seconds / 60n) % 60n
  const s = seconds % 60n
  if (s !== 0n) return `${d}° ${m}' ${s}"`
  return m === 0n ? `${d}°` : `${d}° ${m}'`
}

function exactText(value: Fraction): string {
  const seconds = value.mul(new Fraction(3600n, 1n))
  if (seconds.d === 1n) return inSexagesimal(seconds.n)
  const places = exactPlaces(value)
  return `${places === undefined ? mixedNumber(value.n, value.d) : toPlaces(value, places)}°`
}

function measuredText(value: Degrees, uncertainty: Degrees | undefined): string {
  const seconds = Math.abs(value) * 3600
  const whole = Math.round(seconds)
  if (!uncertainty && Math.abs(seconds - whole) <= ON_A_SECOND) {
    return `${value < 0 && whole > 0 ? MINUS : ''}${inSexagesimal(BigInt(whole))}`
  }
  return `${measuredDecimal(value, uncertainty)}°`
}

/**
 * Writes an angle: an exact one exactly, in degrees, minutes and seconds where these are whole (`47° 30'`); a measured
 * one in decimal degrees to what its uncertainty is worth (`47.52°`). `parseAngle` reads everything that this writes.
 *
 * @param value an exact angle, or a measured one
 * @throws ScantlingError for a number that is not finite
 */
export function formatAngle(value: Angle | Radians, format: AngleFormat = {}): string {
  if (typeof value !== 'number')
    return `${value.degrees.s < 0n ? MINUS : ''}${exactText(value.degrees.abs())}`
  if (!Number.isFinite(value)) {
    throw new CoreError(reason('notation.unwritable-angle', { value: String(value) }))
  }
  const { uncertainty } = format
  return measuredText(inDegrees(value), uncertainty === undefined ? undefined : inDegrees(uncertainty))
}
