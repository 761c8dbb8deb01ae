import { reason } from '../words/core-words.ts'
import { type Point, type PointsOf, pointLike, type Vector, vectorLike } from './frames.ts'
import { GeometryError } from './geometry-error.ts'

/** A straight line through points that are uncertain in both coordinates alike. */
export interface LineFit<P extends Point> {
  /** Centroid of the points; the line passes through it. */
  centroid: P
  /** Unit vector along the line, from the first point towards the last. */
  direction: Vector<P>
  /** The two ends: the outermost points' feet on the line, in the order of `direction`. */
  ends: [P, P]
  /** Positions of the ends along the line from the centroid. */
  at: [number, number]
  /** Standard uncertainty of the line across itself at the centroid, for unit sigma of each coordinate. */
  offset: number
  /** Standard uncertainty of its direction, radians, for unit sigma; independent of `offset`. */
  rotation: number
  /** Sum of squared distances of the points from the line. */
  squares: number
  n: number
}

/**
 * Total least-squares (orthogonal) line.
 * @param points two or more, in any frame
 * @throws GeometryError when there are fewer than two different points
 * Source: Pearson 1901, "On lines and planes of closest fit": the principal axis through the centroid.
 */
export function fitLine<P extends Point>(points: PointsOf<P>): LineFit<P> {
  const n = points.length
  const [first, last] = [points[0], points[n - 1]]
  if (first === undefined || last === undefined || n < 2) {
    throw new GeometryError(reason('line.too-few-points'))
  }
  let cx = 0
  let cy = 0
  for (const [x, y] of points) {
    cx += x / n
    cy += y / n
  }
  let sxx = 0
  let sxy = 0
  let syy = 0
  for (const [x, y] of points) {
    sxx += (x - cx) ** 2
    sxy += (x - cx) * (y - cy)
    syy += (y - cy) ** 2
  }
  const angle = 0.5 * Math.atan2(2 * sxy, sxx - syy)
  let dx = Math.cos(angle)
  let dy = Math.sin(angle)
  if ((last[0] - first[0]) * dx + (last[1] - first[1]) * dy < 0) {
    dx = -dx
    dy = -dy
  }
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  let along = 0
  let squares = 0
  for (const [x, y] of points) {
    const t = (x - cx) * dx + (y - cy) * dy
    low = Math.min(low, t)
    high = Math.max(high, t)
    along += t * t
    squares += ((y - cy) * dx - (x - cx) * dy) ** 2
  }
  if (!(along > 0)) throw new GeometryError(reason('line.one-point'))
  return {
    centroid: pointLike(first, cx, cy),
    direction: vectorLike(first, dx, dy),
    ends: [pointLike(first, cx + low * dx, cy + low * dy), pointLike(first, cx + high * dx, cy + high * dy)],
    at: [low, high],
    offset: 1 / Math.sqrt(n),
    rotation: 1 / Math.sqrt(along),
    squares,
    n,
  }
}
