import { distanceBetween } from '../../geometry/distance-between.ts'
import { fitCircle } from '../../geometry/fit-circle.ts'
import { fitLine } from '../../geometry/fit-line.ts'
import type { Pixel } from '../../geometry/frames.ts'
import { type CoreReason, reason } from '../../words/core-words.ts'
import { ScantlingError } from '../../words/scantling-error.ts'

/** The pixels in a field that says where something was picked: one, or a list of them. */
export function pixelsIn(place: unknown): Pixel[] {
  if (!Array.isArray(place)) return []
  return (typeof place[0] === 'number' ? [place] : place) as Pixel[]
}

/** How far apart the points of two picks are at most, one by one; null where they have not as many. */
export function farthestApart(from: readonly Pixel[], to: readonly Pixel[]): number | null {
  if (from.length !== to.length || from.length === 0) return null
  return Math.max(...from.map((point, i) => distanceBetween(point, to[i] ?? point)))
}

function offLine(from: readonly Pixel[], to: readonly Pixel[]): CoreReason {
  const [before, now] = [fitLine(from), fitLine(to)]
  const [dx, dy] = before.direction
  const [px, py] = [now.centroid[0] - before.centroid[0], now.centroid[1] - before.centroid[1]]
  return reason('value.off-line', { by: Math.abs(dx * py - dy * px) })
}

function offCircle(from: readonly Pixel[], to: readonly Pixel[]): CoreReason {
  const [before, now] = [fitCircle(from), fitCircle(to)]
  return reason('value.off-circle', {
    centre: Math.hypot(now.centre[0] - before.centre[0], now.centre[1] - before.centre[1]),
    radius: Math.abs(now.radius - before.radius),
  })
}

/**
 * How far one pick of a mark is from another, pixels: of a line across it, of a circle by its centre and its radius, for
 * their points may be anywhere along them; of a point or a path by its points. null where that can't be told.
 * @param kind of the mark; undefined: not known
 */
export function pickDistance(
  kind: string | undefined,
  from: readonly Pixel[],
  to: readonly Pixel[],
): CoreReason | null {
  if (from.length === 0 || to.length === 0) return null
  try {
    if (kind === 'line') return offLine(from, to)
    if (kind === 'circle') return offCircle(from, to)
  } catch (error) {
    if (error instanceof ScantlingError) return null
    throw error
  }
  const by = kind === 'path' || from.length === 1 ? farthestApart(from, to) : null
  return by === null ? null : reason('value.off-point', { by })
}
