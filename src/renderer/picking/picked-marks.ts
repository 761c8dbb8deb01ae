import type { Pixel } from '../../core/geometry/frames.ts'
import type { PickedMeasure } from '../../core/job/from-picks/add-measured.ts'
import type { PickedSlot } from '../../core/job/from-picks/add-slot.ts'
import { circleThroughCentres } from '../../core/job/from-picks/circle-through-centres.ts'
import { markByHand } from '../../core/job/from-picks/mark-by-hand.ts'
import { type OffOneCircle, offOneCircle } from '../../core/job/from-picks/off-one-circle.ts'
import type { PickedMark, PicksRefused, UnnamedMark } from '../../core/job/from-picks/picked-mark.ts'
import type { Job, Mark } from '../../core/job/model/types.ts'
import { foundMark, type NewFeature, type Picks } from './picks.ts'
import { isThroughHoles } from './tool.ts'

/** A new mark as a job would keep it: where its stroke was found, or else where it was picked. */
const newMark = (feature: NewFeature): UnnamedMark | PicksRefused =>
  foundMark(feature) ?? markByHand(feature.need, feature.pixels, feature.sigmas)

/** The marks that were picked, in their order; why one of them is none, where that is so. */
export function pickedMarks({ features }: Picks): PickedMark[] | PicksRefused {
  const marks: PickedMark[] = []
  for (const feature of features) {
    const mark = 'mark' in feature ? feature.mark : newMark(feature)
    if (typeof mark === 'object' && 'refused' in mark) return mark
    marks.push(mark)
  }
  return marks
}

/** Picks with a tool that measures. */
export type MeasurePicks = Picks & { tool: { kind: 'measure' } }

export const isMeasure = (picks: Picks): picks is MeasurePicks => picks.tool.kind === 'measure'

/**
 * What was picked to be measured.
 * @param job whose old marks may be among it
 */
export const pickedMeasure = (picks: MeasurePicks, job: Pick<Job, 'marks'>): PickedMeasure => ({
  view: picks.tool.view,
  measure: picks.tool.measure,
  marks: isThroughHoles(picks.tool) ? throughHoles(picks, job.marks) : pickedMarks(picks),
})

/** The slot whose two round ends were picked. */
export const pickedSlot = (picks: MeasurePicks): PickedSlot => ({
  view: picks.tool.view,
  ends: pickedMarks(picks),
})

/** The rims that were picked, old ones as they lie in the job. */
function pickedRims(picks: Picks, old: readonly Mark[]): UnnamedMark[] | PicksRefused {
  const marks = pickedMarks(picks)
  if ('refused' in marks) return marks
  return marks.flatMap((mark) =>
    typeof mark === 'string' ? (old.find(({ id }) => id === mark) ?? []) : mark,
  )
}

/** How far the holes that were picked are from lying on one circle; null where they do, or no holes are picked. */
export function holesOffOneCircle(picks: Picks, { marks }: Pick<Job, 'marks'>): OffOneCircle | null {
  if (!isThroughHoles(picks.tool)) return null
  const rims = pickedRims(picks, marks)
  return 'refused' in rims ? null : offOneCircle(rims)
}

/** The circle through the middles of the holes that were picked. */
function throughHoles(picks: Picks, old: readonly Mark[]): PickedMark[] | PicksRefused {
  const rims = pickedRims(picks, old)
  if ('refused' in rims) return rims
  const circle = circleThroughCentres(rims)
  return 'refused' in circle ? circle : [circle]
}

/** A mark that was picked once more; null before it is. */
export function pickedAgain({ tool, features }: Picks): UnnamedMark | PicksRefused | null {
  const [feature] = features
  if (tool.kind !== 'repeat' || feature === undefined || !('pixels' in feature) || !feature.done) return null
  return newMark(feature)
}

/** The two opposite corners that were picked with a tool that takes such; null before both are. */
export function pickedCorners({ features }: Picks): [Pixel, Pixel] | null {
  const [a, b] = features.flatMap((feature) => ('pixels' in feature ? feature.pixels : []))
  return a === undefined || b === undefined ? null : [a, b]
}
