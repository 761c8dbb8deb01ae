import type { Pixel } from '../../core/geometry/frames.ts'
import type { FoundStroke } from '../../core/imaging/index.ts'

/** Ways of the strokes that were found, as the lens draws them: a place on each and its direction, radians. */
export function waysOf(found: FoundStroke): { at: Pixel; direction: number }[] {
  switch (found.kind) {
    case 'point':
      return [{ at: found.pixel, direction: found.direction }]
    case 'crossing':
      return found.directions.map((direction) => ({ at: found.pixel, direction }))
    default:
      return []
  }
}

/** Where a pick would lie; null for what is none. */
export const placeFound = (found: FoundStroke): Pixel | null =>
  found.kind === 'point' || found.kind === 'crossing' ? found.pixel : null
