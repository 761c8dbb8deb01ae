import { trySlotEnds } from '../../../core/job/from-picks/add-slot.ts'
import type { Job, Unit } from '../../../core/job/model/types.ts'
import { mintForTrial } from '../../bench/mint.ts'
import { useTrial } from '../../entering/use-trial.ts'
import { type MeasurePicks, pickedSlot } from '../../picking/picked-marks.ts'
import { isLooking } from '../../picking/picks.ts'
import { Caution } from '../keeping/caution.tsx'
import { endsDifferInWords } from './ends-differ-words.ts'

const ENDS = 'as_ends'

/** That the two ends of a slot are not of one size, where they differ by more than how sure they are. */
export function EndsDiffer({ picks, job, unit }: { picks: MeasurePicks; job: Job; unit: Unit }) {
  const made = trySlotEnds(job, pickedSlot(picks), ENDS, mintForTrial())
  const row = useTrial(job, made, ENDS, unit)?.row ?? null
  const words = row === null || isLooking(picks) ? '' : endsDifferInWords(row, unit)
  return words === '' ? null : <Caution>{words}</Caution>
}
