import { type CircleFit, fitCircle } from '../../geometry/fit-circle.ts'
import type { Pixel } from '../../geometry/frames.ts'
import { GeometryError } from '../../geometry/geometry-error.ts'
import * as elements from '../../linear-algebra/elements-unchecked.ts'
import { leastSquares, type Row } from '../../linear-algebra/linear-least-squares.ts'

const { f64 } = elements

/** By how much a round stroke is an ellipse rather than a circle. */
export interface OutOfRound {
  /** Longest less shortest diameter, pixels, and its standard uncertainty. */
  by: number
  sigma: number
  /** Direction of the longest diameter, radians from x towards y, −π/2 to π/2. */
  longest: number
}

/** Radius by angle: a constant, the centre's two, and two for the ellipse. */
const PARAMETERS = 5
const FEWEST = PARAMETERS + 3
/** So many times its own uncertainty before it is told. */
const CLEAR = 4

/**
 * Whether a whole circle is clearly an ellipse, as a circle becomes on paper that has shrunk more one way than the other.
 * @param centres of the kept pieces, all round
 * @returns null when it is round for all that can be told
 * Method: least squares of the distances from the circle by 1, cos φ, sin φ, cos 2φ, sin 2φ: to first order the second
 * harmonic of a nearly round ellipse is a quarter of the difference of its diameters.
 */
export function outOfRound(centres: readonly Pixel[]): OutOfRound | null {
  const circle = centres.length < FEWEST ? null : circleThrough(centres)
  if (circle === null) return null
  const { centre, radius } = circle
  const rows = centres.map(([x, y]): Row => {
    const a = Math.atan2(y - centre[1], x - centre[0])
    const away = Math.hypot(x - centre[0], y - centre[1]) - radius
    return [away, [1, Math.cos(a), Math.sin(a), Math.cos(2 * a), Math.sin(2 * a)]]
  })
  const fit = leastSquares(rows, PARAMETERS)
  if (fit === null) return null
  const { solution, inverse, squares } = fit
  const variance = squares / (rows.length - PARAMETERS)
  const [, , , even = 0, odd = 0] = solution
  const size = Math.hypot(even, odd)
  const [e, o] = size > 0 ? [even / size, odd / size] : [1, 0]
  const unit =
    e * e * f64(inverse, 3 * PARAMETERS + 3) +
    2 * e * o * f64(inverse, 3 * PARAMETERS + 4) +
    o * o * f64(inverse, 4 * PARAMETERS + 4)
  const sigma = Math.sqrt(variance * unit)
  return size > CLEAR * sigma ? { by: 4 * size, sigma: 4 * sigma, longest: Math.atan2(odd, even) / 2 } : null
}

function circleThrough(centres: readonly Pixel[]): CircleFit<Pixel> | null {
  try {
    return fitCircle(centres)
  } catch (error) {
    // Marks of a job may lie on a straight line.
    if (error instanceof GeometryError) return null
    throw error
  }
}
