import { addTo } from '../linear-algebra/add-to.ts'
import { element } from '../linear-algebra/element.ts'
import type { Point, PointsOf } from './frames.ts'

/** A number computed from points, with its derivative by each coordinate: x0, y0, x1, y1, … */
export interface Measured {
  value: number
  gradient: number[]
}

/** Signed area by the shoelace formula; positive when x turns towards y. The last point joins the first. */
export function polygonArea<P extends Point>(points: PointsOf<P>): Measured {
  const n = points.length
  const gradient = new Array<number>(2 * n).fill(0)
  let twice = 0
  for (let i = 0; i < n; i++) {
    const [x, y] = element(points, i)
    const [px, py] = element(points, (i + n - 1) % n)
    const [nx, ny] = element(points, (i + 1) % n)
    twice += x * ny - nx * y
    gradient[2 * i] = (ny - py) / 2
    gradient[2 * i + 1] = (px - nx) / 2
  }
  return { value: twice / 2, gradient }
}

/** Length of the path through the points; closed: back to the first one. */
export function pathLength<P extends Point>(points: PointsOf<P>, closed: boolean): Measured {
  const n = points.length
  const gradient = new Array<number>(2 * n).fill(0)
  let value = 0
  for (let i = closed ? 0 : 1; i < n; i++) {
    const j = (i + n - 1) % n
    const [x, y] = element(points, i)
    const [px, py] = element(points, j)
    const length = Math.hypot(x - px, y - py)
    value += length
    if (length === 0) continue
    const ux = (x - px) / length
    const uy = (y - py) / length
    addTo(gradient, 2 * i, ux)
    addTo(gradient, 2 * i + 1, uy)
    addTo(gradient, 2 * j, -ux)
    addTo(gradient, 2 * j + 1, -uy)
  }
  return { value, gradient }
}

/** True when two sides of the closed polygon cross each other. Sides that share a corner do not count. */
export function crossesItself<P extends Point>(points: PointsOf<P>): boolean {
  const n = points.length
  for (let i = 0; i < n; i++) {
    for (let j = i + 2; j < n; j++) {
      if (i === 0 && j === n - 1) continue
      const [a, b] = [element(points, i), element(points, (i + 1) % n)]
      const [c, d] = [element(points, j), element(points, (j + 1) % n)]
      if (side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0) return true
    }
  }
  return false
}

const side = <P extends Point>(a: P, b: P, c: P): number =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
