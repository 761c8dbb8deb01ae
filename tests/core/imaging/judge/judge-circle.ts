import { inverse, Matrix } from 'ml-matrix'
import { findCircle, type StrokeCircle } from '../../../../src/core/imaging/index.ts'
import { boundFor } from '../cramer-rao.ts'
import type { CircleCase } from '../simulate/circle-case.ts'
import type { Outcome } from './score.ts'

export interface CircleOutcomes {
  /** Distance between the two circles, along all of the arc. */
  along: Outcome
  centre: Outcome
  radius: Outcome
}

/** A circle or an arc against the truth. */
export function judgeCircle(c: CircleCase): CircleOutcomes | null {
  const whole = c.sector[1] - c.sector[0] > 6.28
  const found = findCircle(c.window, c.rough, { whole })
  if (found.kind === 'none') return null
  const error = [found.centre[0] - c.centre[0], found.centre[1] - c.centre[1], found.radius - c.radius]
  const bound = boundOf(c)
  const radial = radialMoment(c.sector)
  const stated = covarianceOf(found)
  const of = (weights: Matrix, parts: readonly number[]): Outcome => ({
    square: quadratic(weights, error),
    bound: weights.mmul(bound).trace(),
    chiSquare: quadratic(
      inverse(stated.selection([...parts], [...parts])),
      parts.map((i) => error[i] as number),
    ),
    dof: parts.length,
  })
  return {
    along: of(radial, [0, 1, 2]),
    centre: of(Matrix.diag([1, 1, 0]), [0, 1]),
    radius: of(Matrix.diag([0, 0, 1]), [2]),
  }
}

function boundOf(c: CircleCase): Matrix {
  const [start, end] = c.sector
  return boundFor(c.look, c, {
    picture: ([dx = 0, dy = 0, dr = 0]) => c.picture(dx, dy, dr),
    at: [0, 0, 0],
    steps: [0.02, 0.02, 0.02],
    used: (x, y) => {
      const a = Math.atan2(y - c.centre[1], x - c.centre[0])
      const middle = (start + end) / 2
      return (
        Math.abs(a - middle - 2 * Math.PI * Math.round((a - middle) / (2 * Math.PI))) <= (end - start) / 2
      )
    },
  })
}

/** Mean over the arc of g gᵀ, g = (cos, sin, 1): how far out the circle moves there with centre and radius. */
function radialMoment([start, end]: readonly [number, number]): Matrix {
  const steps = 360
  const moment = Matrix.zeros(3, 3)
  for (let i = 0; i < steps; i++) {
    const a = start + ((end - start) * (i + 0.5)) / steps
    const g = Matrix.columnVector([Math.cos(a), Math.sin(a), 1])
    moment.add(g.mmul(g.transpose()).div(steps))
  }
  return moment
}

function covarianceOf({ covariance: [xx, xy, xr, yy, yr, rr] }: StrokeCircle): Matrix {
  return new Matrix([
    [xx, xy, xr],
    [xy, yy, yr],
    [xr, yr, rr],
  ])
}

function quadratic(weights: Matrix, error: readonly number[]): number {
  const e = Matrix.columnVector([...error])
  return e.transpose().mmul(weights).mmul(e).get(0, 0)
}
