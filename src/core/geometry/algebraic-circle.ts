import { reason } from '../words/core-words.ts'
import { type Point, type PointsOf, pointLike } from './frames.ts'
import { GeometryError } from './geometry-error.ts'

/**
 * Circle by linear least squares on x² + y²: quick, near the geometric circle, but drawn inwards on short arcs.
 * @param points three or more, in any frame, not on one straight line
 * @throws GeometryError when no circle is determined
 * Source: Kåsa 1976, "A circle fitting procedure and its error analysis".
 */
export function algebraicCircle<P extends Point>(points: PointsOf<P>): { centre: P; radius: number } {
  const n = points.length
  const [first] = points
  if (first === undefined || n < 3) throw new GeometryError(reason('circle.too-few-points'))
  let mx = 0
  let my = 0
  for (const [x, y] of points) {
    mx += x / n
    my += y / n
  }
  let sxx = 0
  let sxy = 0
  let syy = 0
  let sxz = 0
  let syz = 0
  let sz = 0
  for (const [x, y] of points) {
    const u = x - mx
    const v = y - my
    const z = u * u + v * v
    sxx += u * u
    sxy += u * v
    syy += v * v
    sxz += u * z
    syz += v * z
    sz += z
  }
  const determinant = sxx * syy - sxy * sxy
  // Points on a line, to one part in 10⁵ of their extent: the radius would be anything.
  if (!(determinant > 1e-10 * (sxx + syy) ** 2)) {
    throw new GeometryError(reason('circle.points-on-one-line'))
  }
  const u = (sxz * syy - syz * sxy) / (2 * determinant)
  const v = (syz * sxx - sxz * sxy) / (2 * determinant)
  return { centre: pointLike(first, mx + u, my + v), radius: Math.sqrt(u * u + v * v + sz / n) }
}
