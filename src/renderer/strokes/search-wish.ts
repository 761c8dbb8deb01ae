import type { Ink } from '../../core/imaging/index.ts'
import type { MarkNeed } from '../../core/job/model/mark-needs.ts'
import type { FoundOn, Mark, StrokeReading } from '../../core/job/model/types.ts'
import type { Camera } from '../camera/camera.ts'
import type { HowToPick, RoundSide, StraightSide } from '../picking/how-to-pick.ts'
import { type SeenFrom, seenFrom } from './edge-sides.ts'

/** How the stroke under picks is looked for. */
export interface SearchWish {
  /** An end is an arc that is looked for from one place on it. */
  as: FoundOn['as'] | 'end'
  /** How far it may lie from where it was pointed at, pixels of the scan. */
  reach: number
  /** Which part of it is wanted: as a job says it, or as it is seen on the screen. */
  reading: StrokeReading | { straight: StraightSide; round: RoundSide; from: SeenFrom }
  /** Whether a point is taken where strokes cross within reach, and a circle as an arc where it is not whole. */
  either: boolean
  /** Another stroke that runs along it so near leaves open which is meant, pixels; left out: none does. */
  alone?: number
  /** Whether dark or light strokes are meant; left out where nothing says which are ink. */
  ink?: Ink
}

const AS: Partial<Record<MarkNeed, FoundOn['as']>> = { point: 'point', line: 'line', circle: 'circle' }

/** How the stroke under all picks of a mark is looked for; null for what has none. */
export function wishFor(
  need: MarkNeed,
  { straight, round, crossings }: HowToPick,
  camera: Camera,
  reach: number,
): SearchWish | null {
  const as = AS[need]
  if (as === undefined) return null
  const reading = { straight, round, from: seenFrom(camera) }
  return { as, reach, reading, either: need === 'circle' || crossings }
}

/** What is under the pointer while a mark is being picked: the point itself, or one of a line or circle. */
export function glanceFor(need: MarkNeed, how: HowToPick, camera: Camera, reach: number): SearchWish | null {
  if (AS[need] === undefined) return null
  const point = wishFor('point', how, camera, reach)
  if (point === null || need === 'point') return point
  return { ...point, reading: 'centre', either: false }
}

/** As a mark was found before, for other picks of it. */
export const wishAgain = ({ as, reading }: FoundOn, reach: number): SearchWish => ({
  as,
  reach,
  reading,
  either: false,
})

/** How a mark that is picked again is picked: as it was. */
export const againByHand = (mark: Mark): boolean => mark.how === 'hand' || mark.stroke === undefined
