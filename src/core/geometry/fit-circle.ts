import type { Point } from './frames.ts'
import { GeometryError } from './geometry-error.ts'
import { invertSymmetric3 } from './symmetric3.ts'

export interface CircleFit {
  centre: Point
  radius: number
  /** Sum of squared distances of the points from the circle. */
  squares: number
  n: number
  /**
   * First-order change of (centre x, centre y, radius) with each coordinate of the points:
   * three rows of 2n numbers, ordered x0, y0, x1, y1, …
   */
  sensitivity: [Float64Array, Float64Array, Float64Array]
}

const MAX_STEPS = 200

/**
 * Geometric least-squares circle: the sum of squared distances from the points to the circle is smallest.
 * @param points three or more, in any frame, not on one straight line
 * @throws GeometryError when no circle is determined
 * Source: Gander, Golub & Strebel, BIT 34 (1994), section 5 (Gauss–Newton on the distances), damped
 * after Levenberg and Marquardt; started from the algebraic fit of Kåsa (1976).
 */
export function fitCircle(points: readonly Point[]): CircleFit {
  const n = points.length
  if (n < 3) throw new GeometryError('A circle needs three picked points or more.')
  let [cx, cy, r] = algebraicCircle(points)
  let squares = sumOfSquares(points, cx, cy, r)
  let damping = 1e-3
  for (let step = 0; step < MAX_STEPS; step++) {
    // Residual d − r with d the distance from the centre; its gradient is (−ux, −uy, −1).
    let a = 0
    let b = 0
    let c = 0
    let d = 0
    let e = 0
    let gx = 0
    let gy = 0
    let gr = 0
    for (const [x, y] of points) {
      const distance = Math.hypot(x - cx, y - cy) || Number.MIN_VALUE
      const ux = (x - cx) / distance
      const uy = (y - cy) / distance
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
    const inverse = invertSymmetric3([a * (1 + damping), b, c, d * (1 + damping), e, n * (1 + damping)])
    if (inverse === null) break
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
      if (Math.hypot(sx, sy, sr) <= 1e-13 * Math.abs(r)) break
    } else {
      damping *= 10
      if (damping > 1e12) break
    }
  }
  return { centre: [cx, cy], radius: r, squares, n, sensitivity: sensitivityOf(points, cx, cy, r) }
}

function sumOfSquares(points: readonly Point[], cx: number, cy: number, r: number): number {
  let sum = 0
  for (const [x, y] of points) sum += (Math.hypot(x - cx, y - cy) - r) ** 2
  return sum
}

function algebraicCircle(points: readonly Point[]): [number, number, number] {
  const n = points.length
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
    throw new GeometryError(
      'The points of the circle lie on one straight line, so its radius is not determined.',
    )
  }
  const u = (sxz * syy - syz * sxy) / (2 * determinant)
  const v = (syz * sxx - sxz * sxy) / (2 * determinant)
  return [mx + u, my + v, Math.sqrt(u * u + v * v + sz / n)]
}

function sensitivityOf(
  points: readonly Point[],
  cx: number,
  cy: number,
  r: number,
): CircleFit['sensitivity'] {
  const n = points.length
  const ux = new Float64Array(n)
  const uy = new Float64Array(n)
  let a = 0
  let b = 0
  let c = 0
  let d = 0
  let e = 0
  points.forEach(([x, y], i) => {
    const distance = Math.hypot(x - cx, y - cy) || Number.MIN_VALUE
    const p = (x - cx) / distance
    const q = (y - cy) / distance
    ux[i] = p
    uy[i] = q
    a += p * p
    b += p * q
    c += p
    d += q * q
    e += q
  })
  const inverse = invertSymmetric3([a, b, c, d, e, n])
  if (inverse === null || !Number.isFinite(r)) {
    throw new GeometryError(
      'The points of the circle cover too small an arc for its radius to be determined.',
    )
  }
  const rows: CircleFit['sensitivity'] = [
    new Float64Array(2 * n),
    new Float64Array(2 * n),
    new Float64Array(2 * n),
  ]
  for (let i = 0; i < n; i++) {
    const p = ux[i] as number
    const q = uy[i] as number
    const byNormal = [
      inverse[0] * p + inverse[1] * q + inverse[2],
      inverse[1] * p + inverse[3] * q + inverse[4],
      inverse[2] * p + inverse[4] * q + inverse[5],
    ]
    rows.forEach((row, k) => {
      row[2 * i] = (byNormal[k] as number) * p
      row[2 * i + 1] = (byNormal[k] as number) * q
    })
  }
  return rows
}
