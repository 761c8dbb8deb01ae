import { fitCircle } from '../../geometry/fit-circle.ts'
import { type Pixel, pixel } from '../../geometry/frames.ts'

/** A direction that is less than this of what it was, once others are taken out of it, is none of its own. */
const NOTHING_LEFT = 1e-6
/** As much must be left of an oval to tell it from a circle that lies elsewhere: of three places round it there is not. */
const TELLS_AN_OVAL = 0.3

/** What goes once round a circle with the angle, as it does where centre and radius change. */
const CIRCLE: readonly ((angle: number) => number)[] = [() => 1, Math.cos, Math.sin]
/** What goes twice round it, as where a circle is seen as an ellipse, to first order. */
const OVAL: readonly ((angle: number) => number)[] = [(a) => Math.cos(2 * a), (a) => Math.sin(2 * a)]

/**
 * How the picks of a circle scatter about it, across it. A sheet that shrank more one way shows an ellipse, which is
 * no scatter: what goes twice round the circle with the angle is taken out as well.
 * @param points pixels
 * @returns sum of squares about the fitted shape, pixels², and its degrees of freedom: 0 where nothing is left over
 * Method: residuals of the geometric circle, freed by Gram–Schmidt of 1, cos θ, sin θ (the circle) and cos 2θ, sin 2θ
 * (an ellipse, to first order).
 */
export function roundScatter(points: readonly Pixel[]): { squares: number; dof: number } {
  const { angles, residuals } = about(points)
  const units = ownDirections(angles, [...CIRCLE, ...OVAL], NOTHING_LEFT)
  const left = units.reduce(without, residuals)
  return { squares: dot(left, left), dof: Math.max(0, points.length - units.length) }
}

/**
 * Points of a circle moved across it so that they no longer show what all of them together show of an ellipse.
 * @returns with the degrees of freedom that this leaves them about one circle
 */
export function freedOfOval(points: readonly Pixel[]): { points: Pixel[]; dof: number } {
  const { angles, residuals } = about(points)
  const circle = ownDirections(angles, CIRCLE, NOTHING_LEFT)
  const oval = ownDirections(angles, OVAL, TELLS_AN_OVAL, circle)
  const freed = oval.reduce(without, residuals)
  return {
    points: points.map(([x, y], i) => {
      const [by, angle] = [(freed[i] ?? 0) - (residuals[i] ?? 0), angles[i] ?? 0]
      return pixel(x + by * Math.cos(angle), y + by * Math.sin(angle))
    }),
    dof: points.length - circle.length - oval.length,
  }
}

/** At which angle each point lies as seen from the centre of the circle through all of them, and how far outside it. */
function about(points: readonly Pixel[]): { angles: number[]; residuals: number[] } {
  const { centre, radius } = fitCircle(points)
  return {
    angles: points.map(([x, y]) => Math.atan2(y - centre[1], x - centre[0])),
    residuals: points.map(([x, y]) => Math.hypot(x - centre[0], y - centre[1]) - radius),
  }
}

/** Unit vectors of what each shape has of its own beside those before it, where that is more than a share of it. */
function ownDirections(
  angles: readonly number[],
  shapes: readonly ((angle: number) => number)[],
  share: number,
  before: readonly (readonly number[])[] = [],
): number[][] {
  const units: number[][] = []
  for (const shape of shapes) {
    const own = [...before, ...units].reduce(without, angles.map(shape))
    const size = Math.sqrt(dot(own, own))
    if (size > share * Math.sqrt(angles.length)) units.push(own.map((v) => v / size))
  }
  return units
}

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0)

function without(vector: readonly number[], unit: readonly number[]): number[] {
  const part = dot(vector, unit)
  return vector.map((value, i) => value - part * (unit[i] ?? 0))
}
