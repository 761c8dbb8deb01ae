import { fitLine } from '../../../../src/core/geometry/fit-line.ts'
import { pixel } from '../../../../src/core/geometry/frames.ts'
import { findLine } from '../../../../src/core/imaging/index.ts'
import { boundFor } from '../cramer-rao.ts'
import type { LineCase } from '../simulate/line-case.ts'
import { acrossOf } from '../simulate/shapes.ts'
import type { Outcome } from './score.ts'
import { within } from './used-length.ts'

/**
 * A straight stroke against the truth: the mean square of the distance between the two lines along all of it; its
 * stated uncertainty is that of the line through the kept centres.
 */
export function judgeLine(c: LineCase): Outcome | null {
  const found = findLine(c.window, ...c.rough)
  if (found.kind === 'none') return null
  const kept = found.profiles.filter((p) => p.kept).map((p) => p.centre)
  const line = fitLine(kept)
  const [dx, dy] = line.direction
  const n = acrossOf(c.direction)
  const half = c.length / 2
  const [mx, my] = [(c.ends[0][0] + c.ends[1][0]) / 2, (c.ends[0][1] + c.ends[1][1]) / 2]
  const cosine = dx * Math.cos(c.direction) + dy * Math.sin(c.direction)
  const sine = dx * n[0] + dy * n[1]
  const slope = sine / cosine
  const [gx, gy] = [line.centroid[0] - mx, line.centroid[1] - my]
  const along = gx * Math.cos(c.direction) + gy * Math.sin(c.direction)
  const atCentroid = gx * n[0] + gy * n[1]
  const offset = atCentroid - slope * along
  const bound = boundFor(c.look, c, {
    picture: ([across = 0, turn = 0]) => c.picture(across, turn),
    at: [0, 0],
    steps: [0.02, 0.02 / half],
    used: within(pixel(mx, my), c.direction, [-half, half]),
  })
  return {
    square: offset ** 2 + (slope * half) ** 2 / 3,
    bound: bound.get(0, 0) + (bound.get(1, 1) * half * half) / 3,
    chiSquare:
      (atCentroid / (found.sigma * line.offset)) ** 2 +
      (Math.atan(slope) / (found.sigma * line.rotation)) ** 2,
    dof: 2,
  }
}
