import { findPoint } from '../../../../src/core/imaging/index.ts'
import { boundFor, varianceOf } from '../cramer-rao.ts'
import type { PointCase } from '../simulate/point-case.ts'
import { acrossOf } from '../simulate/shapes.ts'
import type { Outcome } from './score.ts'
import { usedLength, within } from './used-length.ts'

/** A point on a stroke against the truth: the error is across the stroke. */
export function judgePoint(c: PointCase): Outcome | null {
  const found = findPoint(c.window, c.rough)
  if (found.kind === 'none') return null
  const n = acrossOf(c.direction)
  const [x, y] = [found.pixel[0] - c.place[0], found.pixel[1] - c.place[1]]
  const error = x * n[0] + y * n[1]
  const along = x * Math.cos(c.direction) + y * Math.sin(c.direction)
  const bound = boundFor(c.look, c, {
    picture: ([across = 0, turn = 0]) => c.picture(across, turn),
    at: [0, 0],
    steps: [0.02, 0.0005],
    used: within(c.place, c.direction, usedLength(found.profiles, c.place, c.direction)),
  })
  return {
    square: error * error,
    bound: varianceOf(bound, [1, along]),
    chiSquare: (error / found.across) ** 2,
    dof: 1,
  }
}
