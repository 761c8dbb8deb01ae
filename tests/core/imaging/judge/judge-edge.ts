import { findPoint } from '../../../../src/core/imaging/index.ts'
import { boundFor, varianceOf } from '../cramer-rao.ts'
import type { PointCase } from '../simulate/point-case.ts'
import { acrossOf } from '../simulate/shapes.ts'
import type { Outcome } from './score.ts'
import { usedLength, within } from './used-length.ts'

/**
 * An edge of a stroke against the truth. The bound is that of an estimator that knows neither the stroke's width nor its
 * contrast nor its blur.
 */
export function judgeEdge(c: PointCase, reading: 'left' | 'right'): Outcome | null {
  const found = findPoint(c.window, c.rough, { reading })
  if (found.kind === 'none') return null
  // Which edge is the right one depends on which way the stroke is told to run: near upright, either may be said.
  const n = acrossOf(c.direction)
  const way = Math.cos(found.direction - c.direction) > 0 ? 1 : -1
  const side = reading === 'right' ? way : -way
  const [x, y] = [found.pixel[0] - c.place[0], found.pixel[1] - c.place[1]]
  const error = x * n[0] + y * n[1] - (side * c.look.width) / 2
  const along = x * Math.cos(c.direction) + y * Math.sin(c.direction)
  const { width, contrast, blur } = c.look
  const bound = boundFor(c.look, c, {
    picture: ([across = 0, turn = 0, w = width, k = contrast, b = blur]) => c.picture(across, turn, w, k, b),
    at: [0, 0, width, contrast, blur],
    steps: [0.02, 0.0005, 0.02, 0.5, 0.02],
    used: within(c.place, c.direction, usedLength(found.profiles, c.place, c.direction)),
  })
  return {
    square: error * error,
    bound: varianceOf(bound, [1, along, side / 2, 0, 0]),
    chiSquare: (error / found.across) ** 2,
    dof: 1,
  }
}
