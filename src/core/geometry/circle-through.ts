import { type Pixel, pixel } from './frames.ts'

export type ThreePoints = readonly [Pixel, Pixel, Pixel]

export interface Circle {
  centre: Pixel
  radius: number
}

/** The circle through three places; null when they are on one line or nearly so. */
export function circleThrough([a, b, c]: ThreePoints): Circle | null {
  const [bx, by] = [b[0] - a[0], b[1] - a[1]]
  const [cx, cy] = [c[0] - a[0], c[1] - a[1]]
  const d = 2 * (bx * cy - by * cx)
  const longest = Math.max(Math.hypot(bx, by), Math.hypot(cx, cy), Math.hypot(cx - bx, cy - by))
  if (!(Math.abs(d) > 1e-3 * longest ** 2)) return null
  const x = (cy * (bx * bx + by * by) - by * (cx * cx + cy * cy)) / d
  const y = (bx * (cx * cx + cy * cy) - cx * (bx * bx + by * by)) / d
  return { centre: pixel(a[0] + x, a[1] + y), radius: Math.hypot(x, y) }
}
