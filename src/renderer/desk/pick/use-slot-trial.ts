import { addSlot, type SlotSize } from '../../../core/job/from-picks/add-slot.ts'
import type { Job, Unit } from '../../../core/job/model/types.ts'
import { mintForTrial } from '../../bench/mint.ts'
import { useTrial } from '../../entering/use-trial.ts'
import type { Trial } from '../../findings/computer.ts'
import { type MeasurePicks, pickedSlot } from '../../picking/picked-marks.ts'
import { isLooking } from '../../picking/picks.ts'

/**
 * What a size of the slot that was picked comes to, with the figure beside it where one is given; null while its ends are
 * still looked for, or it is worked out.
 */
export function useSlotTrial(
  picks: MeasurePicks,
  job: Job,
  unit: Unit,
  { size, printed }: { size: SlotSize; printed?: string },
): Trial | null {
  // Of trials with one name only the newest is worked out.
  const name = `as_${printed === undefined ? 'picked' : 'figured'}_${size}`
  const only = { size, name, label: name, ...(printed === undefined ? {} : { printed }) }
  const made = addSlot(job, pickedSlot(picks), { label: name, count: 1, sizes: [only] }, mintForTrial())
  const trial = useTrial(job, made, name, unit)
  return isLooking(picks) ? null : trial
}
