import { fitCircle } from '../../geometry/fit-circle.ts'
import type { Pixel } from '../../geometry/frames.ts'

/** A direction that is less than this of what it was, once others are taken out of it, is none of its own. */
const NOTHING_LEFT = 1e-6

/**
 * How the picks of a circle scatter about it, across it. A sheet that shrank more one way shows an ellipse, which is
 * no scatter: what goes twice round the circle with the angle is taken out as well.
 * @param points pixels
 * @returns sum of squares about the fitted shape, pixels², and its degrees of freedom: 0 where nothing is left over
 * Method: residuals of the geometric circle, freed by Gram–Schmidt of 1, cos θ, sin θ (the circle) and cos 2θ, sin 2θ
 * (an ellipse, to first order).
 */
export function roundScatter(points: readonly Pixel[]): { squares: number; dof: number } {
  const { centre, radius } = fitCircle(points)
  const angles = points.map(([x, y]) => Math.atan2(y - centre[1], x - centre[0]))
  let left = points.map(([x, y]) => Math.hypot(x - centre[0], y - centre[1]) - radius)
  const directions: number[][] = []
  for (const shape of [
    () => 1,
    Math.cos,
    Math.sin,
    (a: number) => Math.cos(2 * a),
    (a: number) => Math.sin(2 * a),
  ]) {
    const raw = angles.map(shape)
    const own = directions.reduce(without, raw)
    const size = Math.sqrt(dot(own, own))
    if (size <= NOTHING_LEFT * Math.sqrt(points.length)) continue
    const unit = own.map((v) => v / size)
    directions.push(unit)
    left = without(left, unit)
  }
  return { squares: dot(left, left), dof: Math.max(0, points.length - directions.length) }
}

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0)

function without(vector: readonly number[], unit: readonly number[]): number[] {
  const part = dot(vector, unit)
  return vector.map((value, i) => value - part * (unit[i] ?? 0))
}
