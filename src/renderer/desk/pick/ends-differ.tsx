import { trySlotEnds } from '../../../core/job/from-picks/add-slot.ts'
import type { Job, Unit } from '../../../core/job/model/types.ts'
import type { TableRow } from '../../../core/ledger/table/table.ts'
import { plusMinus } from '../../../core/ledger/units/plus-minus.ts'
import { plainText } from '../../../core/words/plain-text.ts'
import { mintForTrial } from '../../bench/mint.ts'
import { useTrial } from '../../entering/use-trial.ts'
import { type MeasurePicks, pickedSlot } from '../../picking/picked-marks.ts'
import { isLooking } from '../../picking/picks.ts'
import { inWords, reason } from '../../words/window-words.ts'
import { Caution } from '../keeping/caution.tsx'

const ENDS = 'as_ends'

/** That the two ends of a slot are not of one size, where they differ by more than how sure they are. */
export function EndsDiffer({ picks, job, unit }: { picks: MeasurePicks; job: Job; unit: Unit }) {
  const made = trySlotEnds(job, pickedSlot(picks), ENDS, mintForTrial())
  const row = useTrial(job, made, ENDS, unit)?.row ?? null
  const words = row === null || isLooking(picks) ? '' : endsDifferInWords(row, unit)
  return words === '' ? null : <Caution>{words}</Caution>
}

/**
 * The same in words; empty where the ends may be of one size.
 * @param row with the diameters of both ends as its evidence
 */
export function endsDifferInWords({ status, evidence }: TableRow, unit: Unit): string {
  const [one, other] = evidence.map(
    ({ written, U }) => `${plainText(written)}${plusMinus(U, 'length', unit)}`,
  )
  if (status !== 'disputed' || one === undefined || other === undefined) return ''
  return inWords(reason('picked.ends-differ', { one, other }))
}
