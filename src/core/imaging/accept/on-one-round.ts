import { fitCircle } from '../../geometry/fit-circle.ts'
import type { Pixel } from '../../geometry/frames.ts'
import { GeometryError } from '../../geometry/geometry-error.ts'

/** Where two straight strokes seem to cross, and their directions, radians. */
interface SeeminglyCrossing {
  pixel: Pixel
  directions: readonly [number, number]
}

const meanSquare = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value ** 2, 0) / values.length

/** How far a place is from the nearer of the two lines of a crossing, pixels. */
function fromNearerLine({ pixel, directions }: SeeminglyCrossing, [x, y]: Pixel): number {
  const [dx, dy] = [x - pixel[0], y - pixel[1]]
  return Math.min(...directions.map((way) => Math.abs(dx * Math.sin(way) - dy * Math.cos(way))))
}

/**
 * Whether what was taken for a crossing is a bend of one round stroke: the centres of its profiles lie no further from
 * one circle than from two lines, though lines have one number more to be fitted by.
 */
export function isOnOneRound(centres: readonly Pixel[], crossing: SeeminglyCrossing): boolean {
  try {
    const { centre, radius } = fitCircle(centres)
    const fromCircle = centres.map(([x, y]) => Math.hypot(x - centre[0], y - centre[1]) - radius)
    return meanSquare(fromCircle) <= meanSquare(centres.map((at) => fromNearerLine(crossing, at)))
  } catch (error) {
    if (error instanceof GeometryError) return false
    throw error
  }
}
