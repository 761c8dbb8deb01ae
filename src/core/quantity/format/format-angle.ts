import Fraction from 'fraction.js'
import { ScantlingError } from '../../words/scantling-error.ts'
import type { Angle } from '../angle.ts'
import { exactPlaces, MINUS, measuredDecimal, mixedNumber, toPlaces } from './decimals.ts'

export interface AngleFormat {
  /** Expanded uncertainty, radians: decides how many decimals are written. */
  readonly uncertainty?: number
}

const DEGREES_PER_RADIAN = 180 / Math.PI
/** A measured angle this near to whole seconds, in seconds, is on them: the rest is the rounding of the computer. */
const ON_A_SECOND = 1e-6

function inSexagesimal(seconds: bigint): string {
  const d = seconds / 3600n
  const m = (seconds / 60n) % 60n
  const s = seconds % 60n
  if (s !== 0n) return `${d}° ${m}' ${s}"`
  return m === 0n ? `${d}°` : `${d}° ${m}'`
}

function exactText(degrees: Fraction): string {
  const seconds = degrees.mul(new Fraction(3600n, 1n))
  if (seconds.d === 1n) return inSexagesimal(seconds.n)
  const places = exactPlaces(degrees)
  return `${places === undefined ? mixedNumber(degrees.n, degrees.d) : toPlaces(degrees, places)}°`
}

function measuredText(degrees: number, uncertainty: number | undefined): string {
  const seconds = Math.abs(degrees) * 3600
  const whole = Math.round(seconds)
  if (!uncertainty && Math.abs(seconds - whole) <= ON_A_SECOND) {
    return `${degrees < 0 && whole > 0 ? MINUS : ''}${inSexagesimal(BigInt(whole))}`
  }
  return `${measuredDecimal(degrees, uncertainty === undefined ? undefined : uncertainty * DEGREES_PER_RADIAN)}°`
}

/**
 * Writes an angle: an exact one exactly, in degrees, minutes and seconds where these are whole (`47° 30'`); a measured
 * one in decimal degrees to what its uncertainty is worth (`47.52°`). `parseAngle` reads everything that this writes.
 *
 * @param value an exact angle, or a measured one in radians
 * @throws ScantlingError for a number that is not finite
 */
export function formatAngle(value: Angle | number, format: AngleFormat = {}): string {
  if (typeof value !== 'number')
    return `${value.degrees.s < 0n ? MINUS : ''}${exactText(value.degrees.abs())}`
  if (!Number.isFinite(value)) {
    throw new ScantlingError(`An angle of ${value} cannot be written; check what it was worked out from.`)
  }
  return measuredText(value * DEGREES_PER_RADIAN, format.uncertainty)
}
