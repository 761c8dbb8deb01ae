import { distanceBetween } from '../geometry/distance-between.ts'
import type { True } from '../geometry/frames.ts'
import type { ViewMapping } from '../mapping/view-mapping.ts'
import type { Feature } from './features/feature-of-mark.ts'

/**
 * What each draughting source of a line or a circle does to its points: [dx0, dy0, dx1, …] for unit draughting error.
 * Points and paths need none: each of their coordinates has a source of its own.
 */
export function draughtingDisplacements(
  feature: Feature,
  view: ViewMapping,
  theta: readonly number[],
  points: readonly True[],
): number[][] {
  if (feature.kind === 'line') {
    // Each end of the drawn line lies off by the draughting error, across the line.
    const [p, q] = points as [True, True]
    const length = distanceBetween(q, p) || 1
    const nx = -(q[1] - p[1]) / length
    const ny = (q[0] - p[0]) / length
    return [
      [nx, ny, 0, 0],
      [0, 0, nx, ny],
    ]
  }
  if (feature.centre === undefined) return []
  // The centre lies off in x and y. The compass is off by 1/√2 of that, so that a diameter is worth what the same
  // distance between two drawn points is.
  const [cx, cy] = view.mapping.apply(theta, feature.centre, view.frame).point
  const moves: [number[], number[], number[]] = [[], [], []]
  for (const [x, y] of points) {
    const r = (Math.hypot(x - cx, y - cy) || 1) * Math.SQRT2
    moves[0].push(1, 0)
    moves[1].push(0, 1)
    moves[2].push((x - cx) / r, (y - cy) / r)
  }
  return moves
}
