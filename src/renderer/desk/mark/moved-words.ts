import { distanceBetween } from '../../../core/geometry/distance-between.ts'
import { fitCircle } from '../../../core/geometry/fit-circle.ts'
import { fitLine } from '../../../core/geometry/fit-line.ts'
import type { UnnamedMark } from '../../../core/job/from-picks/picked-mark.ts'
import type { Mark } from '../../../core/job/model/types.ts'
import { firstPlaces } from '../../../core/job/picks/picks-of.ts'
import { pixelsInWords } from '../../strokes/uncertainty-words.ts'

/** How far what was found anew lies from a mark, in words. */
export function movedInWords(mark: Mark, found: UnnamedMark): string {
  const pixels = firstPlaces(found)
  switch (mark.kind) {
    case 'point': {
      const [from, to = from] = [firstPlaces(mark)[0], pixels[0]]
      return pixelsInWords(from === undefined || to === undefined ? 0 : distanceBetween(from, to))
    }
    case 'line': {
      const [before, now] = [fitLine(firstPlaces(mark)), fitLine(pixels)]
      const [dx, dy] = before.direction
      const [px, py] = [now.centroid[0] - before.centroid[0], now.centroid[1] - before.centroid[1]]
      return `${pixelsInWords(Math.abs(dx * py - dy * px))} across it`
    }
    case 'circle': {
      const [before, now] = [fitCircle(firstPlaces(mark)), fitCircle(pixels)]
      const centre = Math.hypot(now.centre[0] - before.centre[0], now.centre[1] - before.centre[1])
      return `centre ${pixelsInWords(centre)}, radius ${pixelsInWords(Math.abs(now.radius - before.radius))}`
    }
    case 'path':
      return pixelsInWords(0)
  }
}
