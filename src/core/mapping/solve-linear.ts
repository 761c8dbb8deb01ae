import { GeometryError } from '../geometry/geometry-error.ts'
import { reason } from '../words/core-words.ts'

/** A determinant below this share of the products that it is the difference of is rounding. */
const SINGULAR_BELOW = 1e-14

/**
 * u and v of xx·u + xy·v = x, yx·u + yy·v = y.
 * @throws GeometryError when they are not determined
 */
export function solveLinear(
  [xx, xy, yx, yy]: readonly [xx: number, xy: number, yx: number, yy: number],
  x: number,
  y: number,
): [u: number, v: number] {
  const [one, other] = [xx * yy, xy * yx]
  const determinant = one - other
  if (!(Math.abs(determinant) > SINGULAR_BELOW * (Math.abs(one) + Math.abs(other)))) {
    throw new GeometryError(reason('mapping.without-scale'))
  }
  return [(yy * x - xy * y) / determinant, (xx * y - yx * x) / determinant]
}
