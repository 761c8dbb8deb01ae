import { degrees, toRadians } from '../../../../geometry/angle-units.ts'
import type { UserPoint } from './affine.ts'

/** No curve is cut into more pieces than this. */
const MOST_PIECES = 10_000

const pieces = (wanted: number): number => Math.min(MOST_PIECES, Math.max(1, Math.ceil(wanted)))

/** How far the middle of three points is from where it would lie on a straight line at an even pace, twice. */
const bend = (p: UserPoint, q: UserPoint, r: UserPoint): number =>
  Math.hypot(p[0] - 2 * q[0] + r[0], p[1] - 2 * q[1] + r[1])

/**
 * Into how many equal steps of its parameter a curve is cut so that no chord is further from it than the tolerance:
 * an eighth of its second derivative times the step squared bounds that distance.
 */
const steps = (secondDerivative: number, tolerance: number): number =>
  pieces(Math.sqrt(secondDerivative / (8 * tolerance)))

/** Points along a curve after its start, the last of them its end as it is written. */
function along(n: number, end: UserPoint, at: (t: number) => UserPoint): UserPoint[] {
  const points = Array.from({ length: n - 1 }, (_, k) => at((k + 1) / n))
  points.push(end)
  return points
}

/** A cubic Bézier curve as chords. Source: SVG 1.1 (Second Edition), section 8.3.6. */
export function flattenCubic(
  p: UserPoint,
  q: UserPoint,
  r: UserPoint,
  end: UserPoint,
  tolerance: number,
): UserPoint[] {
  const n = steps(6 * Math.max(bend(p, q, r), bend(q, r, end)), tolerance)
  return along(n, end, (t) => {
    const s = 1 - t
    const [a, b, c, d] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t]
    return [a * p[0] + b * q[0] + c * r[0] + d * end[0], a * p[1] + b * q[1] + c * r[1] + d * end[1]]
  })
}

/** A quadratic Bézier curve as chords. Source: SVG 1.1 (Second Edition), section 8.3.7. */
export function flattenQuadratic(p: UserPoint, q: UserPoint, end: UserPoint, tolerance: number): UserPoint[] {
  const n = steps(2 * bend(p, q, end), tolerance)
  return along(n, end, (t) => {
    const s = 1 - t
    const [a, b, c] = [s * s, 2 * s * t, t * t]
    return [a * p[0] + b * q[0] + c * end[0], a * p[1] + b * q[1] + c * end[1]]
  })
}

/** An arc of an ellipse by its centre, angles in degrees. */
export interface EllipseArc {
  centre: UserPoint
  radii: readonly [number, number]
  turn: number
  from: number
  to: number
}

/** An arc of an ellipse as chords. Source: SVG 1.1 (Second Edition), appendix F.6. */
export function flattenArc(arc: EllipseArc, end: UserPoint, tolerance: number): UserPoint[] {
  const { centre, radii, turn, from, to } = arc
  const [cos, sin] = [Math.cos(toRadians(degrees(turn))), Math.sin(toRadians(degrees(turn)))]
  const sweep = Math.abs(toRadians(degrees(to - from)))
  const n = steps(sweep * sweep * Math.max(...radii), tolerance)
  return along(n, end, (t) => {
    const angle = toRadians(degrees(from + t * (to - from)))
    const [x, y] = [radii[0] * Math.cos(angle), radii[1] * Math.sin(angle)]
    return [centre[0] + cos * x - sin * y, centre[1] + sin * x + cos * y]
  })
}

/** Corners of the polygon that stands for a whole ellipse, which at least so many are; its axes are x and y. */
export function flattenEllipse(
  centre: UserPoint,
  [rx, ry]: readonly [number, number],
  tolerance: number,
  fewest: number,
): UserPoint[] {
  const turn = 2 * Math.PI
  const n = Math.max(fewest, steps(turn * turn * Math.max(Math.abs(rx), Math.abs(ry)), tolerance))
  return Array.from({ length: n }, (_, k): UserPoint => {
    const angle = (turn * k) / n
    return [centre[0] + rx * Math.cos(angle), centre[1] + ry * Math.sin(angle)]
  })
}
