import type { Circle } from '../../geometry/circle-through.ts'
import { fitCircle } from '../../geometry/fit-circle.ts'
import type { Pixel } from '../../geometry/frames.ts'
import { GeometryError } from '../../geometry/geometry-error.ts'

/** The circle that places lie on best; null where they lie on a straight line or determine none, as pieces of a thin stroke may. */
export function circleOrNone(places: readonly Pixel[]): Circle | null {
  try {
    return fitCircle(places)
  } catch (error) {
    if (error instanceof GeometryError) return null
    throw error
  }
}
