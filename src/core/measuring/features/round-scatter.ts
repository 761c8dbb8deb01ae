import { type CircleFit, fitCircle } from '../../geometry/fit-circle.ts'
import type { Pixel } from '../../geometry/frames.ts'

/** A direction that is less than this of what it was, once others are taken out of it, is none of its own. */
const NOTHING_LEFT = 1e-6
/** What goes once round a circle with the angle, as it does where centre and radius change. */
const CIRCLE: readonly ((angle: number) => number)[] = [() => 1, Math.cos, Math.sin]
/** What goes twice round it, as where a circle is seen as an ellipse, to first order. */
export const OVAL: readonly ((angle: number) => number)[] = [(a) => Math.cos(2 * a), (a) => Math.sin(2 * a)]

/**
 * How the picks of a circle scatter about it, across it. A sheet that shrank more one way shows an ellipse, which is
 * no scatter: what goes twice round the circle with the angle is taken out as well.
 * @param points pixels
 * @returns sum of squares about the fitted shape, pixels², and its degrees of freedom: 0 where nothing is left over
 * Method: residuals of the geometric circle, freed by Gram–Schmidt of 1, cos θ, sin θ (the circle) and cos 2θ, sin 2θ
 * (an ellipse, to first order).
 */
export function roundScatter(points: readonly Pixel[]): { squares: number; dof: number } {
  const { angles, residuals } = aboutCircle(points, fitCircle(points))
  const units = ownDirections(angles, [...CIRCLE, ...OVAL])
  const left = units.reduce(without, residuals)
  return { squares: dot(left, left), dof: Math.max(0, points.length - units.length) }
}

/** At which angle each point lies as seen from the centre of a circle, and how far outside it. */
export function aboutCircle(
  points: readonly Pixel[],
  { centre: [cx, cy], radius }: Pick<CircleFit<Pixel>, 'centre' | 'radius'>,
): { angles: number[]; residuals: number[] } {
  return {
    angles: points.map(([x, y]) => Math.atan2(y - cy, x - cx)),
    residuals: points.map(([x, y]) => Math.hypot(x - cx, y - cy) - radius),
  }
}

/** What shapes have of their own beside the circle itself, over points at these angles. */
export function besideCircle(angles: readonly number[], shape: (angle: number) => number): number[] {
  return ownDirections(angles, CIRCLE).reduce(without, angles.map(shape))
}

/** Unit vectors of what each shape has of its own beside those before it. */
function ownDirections(
  angles: readonly number[],
  shapes: readonly ((angle: number) => number)[],
): number[][] {
  const units: number[][] = []
  for (const shape of shapes) {
    const own = units.reduce(without, angles.map(shape))
    const size = Math.sqrt(dot(own, own))
    if (size > NOTHING_LEFT * Math.sqrt(angles.length)) units.push(own.map((v) => v / size))
  }
  return units
}

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0)

function without(vector: readonly number[], unit: readonly number[]): number[] {
  const part = dot(vector, unit)
  return vector.map((value, i) => value - part * (unit[i] ?? 0))
}
