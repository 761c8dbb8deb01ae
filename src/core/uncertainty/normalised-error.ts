import { covariance } from './covariance.ts'
import { type Coverage, expand } from './coverage.ts'
import type { Uncertain } from './uncertain.ts'

/** E_n of exactly stated values that differ: no number says how much they dispute. */
export const BEYOND_DOUBT = 999

/** What is left of a difference or an uncertainty that is nothing but rounding. */
const ROUNDING = 1e-10

/** Square of the expanded uncertainty of the difference of two values, with the correlation taken off. */
export const squaredU = (a: Uncertain, b: Uncertain, ea: Coverage, eb: Coverage): number =>
  ea.U ** 2 + eb.U ** 2 - 2 * ea.k * eb.k * covariance(a, b)

/**
 * E_n = |a − b| / √(U_a² + U_b²) with the correlation taken off: what the two share does not set them apart.
 * Above 1 they dispute. Capped at 999.
 * @param ea and eb: their expanded uncertainties, where they are known already
 * Source: ISO/IEC 17043, and for the correlation JCGM 100:2008, eq. 16.
 */
export function normalisedError(
  a: Uncertain,
  b: Uncertain,
  ea: Coverage = expand(a),
  eb: Coverage = expand(b),
): number {
  const difference = Math.abs(a.value - b.value)
  const size = Math.max(Math.abs(a.value), Math.abs(b.value), Number.MIN_VALUE)
  if (difference <= ROUNDING * size) return 0
  const square = squaredU(a, b, ea, eb)
  if (!(square > (ROUNDING * size) ** 2)) return BEYOND_DOUBT
  return Math.min(difference / Math.sqrt(square), BEYOND_DOUBT)
}
