import { invertSymmetric3, type Symmetric3 } from '../linear-algebra/symmetric3.ts'
import { reason } from '../words/core-words.ts'
import { algebraicCircle } from './algebraic-circle.ts'
import { type Point, type PointsOf, pointLike } from './frames.ts'
import { GeometryError } from './geometry-error.ts'

type Sensitivity = [number[], number[], number[]]

/** A circle fitted to points, in their frame and unit, with how it moves when they do. */
export interface CircleFit<P extends Point> {
  centre: P
  radius: number
  /** Sum of squared distances of the points from the circle. */
  squares: number
  n: number
  /**
   * First-order change of (centre x, centre y, radius) with each coordinate of the points:
   * three rows of 2n numbers, ordered x0, y0, x1, y1, …
   */
  sensitivity: Sensitivity
}

const MAX_STEPS = 200

/**
 * Geometric least-squares circle: the sum of squared distances from the points to the circle is smallest.
 * @param points three or more, in any frame, not on one straight line
 * @throws GeometryError when no circle is determined
 * Source: Gander, Golub & Strebel, BIT 34 (1994), section 5 (Gauss–Newton on the distances), damped
 * after Levenberg and Marquardt; started from the algebraic circle.
 */
export function fitCircle<P extends Point>(points: PointsOf<P>): CircleFit<P> {
  const n = points.length
  const start = algebraicCircle(points)
  let [cx, cy]: readonly [number, number] = start.centre
  let r = start.radius
  let squares = sumOfSquares(points, cx, cy, r)
  let damping = 1e-3
  for (let step = 0; step < MAX_STEPS; step++) {
    const normal = normalEquations(points, cx, cy, r)
    const [a, b, c, d, e, f] = normal.matrix
    const inverse = invertSymmetric3([a * (1 + damping), b, c, d * (1 + damping), e, f * (1 + damping)])
    if (inverse === null) break
    const { gx, gy, gr } = normal
    const sx = inverse[0] * gx + inverse[1] * gy + inverse[2] * gr
    const sy = inverse[1] * gx + inverse[3] * gy + inverse[4] * gr
    const sr = inverse[2] * gx + inverse[4] * gy + inverse[5] * gr
    const next = sumOfSquares(points, cx + sx, cy + sy, r + sr)
    if (next <= squares) {
      cx += sx
      cy += sy
      r += sr
      squares = next
      damping = Math.max(damping / 10, 1e-15)
      if (Math.abs(sx) + Math.abs(sy) + Math.abs(sr) <= 1e-13 * Math.abs(r)) break
    } else {
      damping *= 10
      if (damping > 1e12) break
    }
  }
  return {
    centre: pointLike(start.centre, cx, cy),
    radius: r,
    squares,
    n,
    sensitivity: sensitivityOf(points, cx, cy, r),
  }
}

/** JᵀJ and Jᵀ·residual for the residuals distance − radius, whose gradient is −(ux, uy, 1). */
function normalEquations(points: readonly Point[], cx: number, cy: number, r: number) {
  let a = 0
  let b = 0
  let c = 0
  let d = 0
  let e = 0
  let gx = 0
  let gy = 0
  let gr = 0
  for (const p of points) {
    const dx = p[0] - cx
    const dy = p[1] - cy
    const distance = Math.sqrt(dx * dx + dy * dy) || Number.MIN_VALUE
    const ux = dx / distance
    const uy = dy / distance
    const residual = distance - r
    a += ux * ux
    b += ux * uy
    c += ux
    d += uy * uy
    e += uy
    gx += ux * residual
    gy += uy * residual
    gr += residual
  }
  const matrix: Symmetric3 = [a, b, c, d, e, points.length]
  return { matrix, gx, gy, gr }
}

function sumOfSquares(points: readonly Point[], cx: number, cy: number, r: number): number {
  let sum = 0
  for (const p of points) {
    const dx = p[0] - cx
    const dy = p[1] - cy
    const residual = Math.sqrt(dx * dx + dy * dy) - r
    sum += residual * residual
  }
  return sum
}

function sensitivityOf(points: readonly Point[], cx: number, cy: number, r: number): Sensitivity {
  const inverse = invertSymmetric3(normalEquations(points, cx, cy, r).matrix)
  if (inverse === null || !Number.isFinite(r)) {
    throw new GeometryError(reason('circle.arc-too-small'))
  }
  const rows: Sensitivity = [[], [], []]
  for (const p of points) {
    const dx = p[0] - cx
    const dy = p[1] - cy
    const distance = Math.sqrt(dx * dx + dy * dy) || Number.MIN_VALUE
    const ux = dx / distance
    const uy = dy / distance
    const byX = inverse[0] * ux + inverse[1] * uy + inverse[2]
    const byY = inverse[1] * ux + inverse[3] * uy + inverse[4]
    const byR = inverse[2] * ux + inverse[4] * uy + inverse[5]
    rows[0].push(byX * ux, byX * uy)
    rows[1].push(byY * ux, byY * uy)
    rows[2].push(byR * ux, byR * uy)
  }
  return rows
}
