import type { Pixel } from '../../core/geometry/frames.ts'
import type { MarkNeed } from '../../core/job/model/mark-needs.ts'
import type { FoundOn, Mark } from '../../core/job/model/types.ts'
import type { Camera } from '../camera/camera.ts'
import type { HowToPick } from '../picking/how-to-pick.ts'
import { seenFrom } from './edge-sides.ts'
import type { Search } from './search.ts'

const AS: Partial<Record<MarkNeed, FoundOn['as']>> = { point: 'point', line: 'line', circle: 'circle' }

/** The search for the stroke under all picks of a mark; null for what has none. */
export function searchFor(
  need: MarkNeed,
  rough: readonly Pixel[],
  { straight, round, crossings }: HowToPick,
  camera: Camera,
  reach: number,
): Search | null {
  const as = AS[need]
  if (as === undefined) return null
  return {
    as,
    rough: [...rough],
    reach,
    wanted: { straight, round, from: seenFrom(camera) },
    either: need === 'circle' || crossings,
  }
}

/** What is under the pointer while a mark is being picked: the point itself, or one of a line or circle. */
export function glanceFor(
  need: MarkNeed,
  at: Pixel,
  how: HowToPick,
  camera: Camera,
  reach: number,
): Search | null {
  if (AS[need] === undefined) return null
  const point = searchFor('point', [at], how, camera, reach)
  if (point === null || need === 'point') return point
  return { ...point, wanted: 'centre', either: false }
}

/** The search that found a mark, about other picks. */
export function searchAgain({ as, reading }: FoundOn, rough: readonly Pixel[], reach: number): Search {
  return { as, rough: [...rough], reach, wanted: reading, either: false }
}

/** How a mark that is picked again is picked: as it was. */
export const againByHand = (mark: Mark): boolean => mark.how === 'hand' || mark.stroke === undefined
