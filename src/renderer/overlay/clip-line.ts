import { distanceBetween } from '../../core/geometry/distance-between.ts'
import { type Screen, screen } from '../../core/geometry/frames.ts'
import type { Extent } from '../camera/camera.ts'

/** A stretch of a line that is in sight, and how far along the line it begins. */
export interface Stretch {
  points: Screen[]
  start: number
}

/**
 * The stretches of a polyline within a box. Close to, a line can be a thousand screens long; dashes are worked out only
 * where they are seen, and begin where they would have begun.
 * Source: Liang and Barsky 1984, "A new concept and method for line clipping".
 */
export function stretchesWithin(points: readonly Screen[], box: Extent): Stretch[] {
  const stretches: Stretch[] = []
  let along = 0
  let open: Stretch | null = null
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1] as Screen, points[i] as Screen]
    const length = distanceBetween(b, a)
    const part = partWithin(a, b, box)
    if (part === null) open = null
    else {
      const [from, to] = part
      const at = (t: number): Screen => screen(a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]))
      if (open === null || from > 0) {
        open = { points: [at(from)], start: along + from * length }
        stretches.push(open)
      }
      open.points.push(at(to))
      if (to < 1) open = null
    }
    along += length
  }
  return stretches
}

/** Between which shares of it a segment is in a box; null when it is nowhere. */
function partWithin([ax, ay]: Screen, [bx, by]: Screen, box: Extent): [number, number] | null {
  let [from, to] = [0, 1]
  const edges = [
    [ax - bx, ax - box.left],
    [bx - ax, box.right - ax],
    [ay - by, ay - box.top],
    [by - ay, box.bottom - ay],
  ] as const
  for (const [p, q] of edges) {
    if (p === 0) {
      if (q < 0) return null
    } else if (p < 0) from = Math.max(from, q / p)
    else to = Math.min(to, q / p)
  }
  return from > to ? null : [from, to]
}
