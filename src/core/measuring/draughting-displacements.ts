import type { True } from '../geometry/frames.ts'
import type { ViewMapping } from '../mapping/view-mapping.ts'
import type { Feature } from './features/feature-of-mark.ts'

/** What each draughting source does to the points: [dx0, dy0, dx1, …] for unit draughting error. */
export function draughtingMoves(
  feature: Feature,
  view: ViewMapping,
  theta: readonly number[],
  points: readonly True[],
): number[][] {
  if (feature.kind === 'line') {
    // Each end of the drawn line lies off by the draughting error, across the line.
    const [p, q] = points as [True, True]
    const length = Math.hypot(q[0] - p[0], q[1] - p[1]) || 1
    const nx = -(q[1] - p[1]) / length
    const ny = (q[0] - p[0]) / length
    return [
      [nx, ny, 0, 0],
      [0, 0, nx, ny],
    ]
  }
  if (feature.centre !== undefined) {
    // The centre lies off in x and y. The compass is off by 1/√2 of that, so that a diameter is worth what
    // the same distance between two drawn points is.
    const [cx, cy] = view.mapping.apply(theta, feature.centre, view.frame).point
    const outward = points.flatMap(([x, y]) => {
      const r = (Math.hypot(x - cx, y - cy) || 1) * Math.SQRT2
      return [(x - cx) / r, (y - cy) / r]
    })
    return [points.flatMap(() => [1, 0]), points.flatMap(() => [0, 1]), outward]
  }
  return points.flatMap((_, i) => [oneOf(2 * points.length, 2 * i), oneOf(2 * points.length, 2 * i + 1)])
}

const oneOf = (n: number, i: number): number[] => {
  const out = new Array<number>(n).fill(0)
  out[i] = 1
  return out
}
