import { HAND_SIGMA } from '../../../core/job/from-picks/mark-by-hand.ts'
import type { TableRow } from '../../../core/ledger/table/table.ts'
import { foundMark, type Picks } from '../../picking/picks.ts'

/** What is known no better than this share of it is asked about, where going closer would make it surer. */
const POOR = 0.1

/** Whether the hand could have been surer: some of it was picked by hand where a pixel of the screen is several of the scan. */
const couldBeSurer = ({ features }: Picks): boolean =>
  features.some(
    (feature) =>
      'pixels' in feature && foundMark(feature) === null && Math.max(...feature.sigmas) > 1.5 * HAND_SIGMA,
  )

/** That a size was picked by hand from so far off that little is known of it, a sentence; empty where that is not so. */
export function fromAfarInWords(picks: Picks, { value, U }: Pick<TableRow, 'value' | 'U'>): string {
  if (value === null || !couldBeSurer(picks) || U <= POOR * Math.abs(value)) return ''
  const known =
    U >= Math.abs(value)
      ? 'it cannot be told from nothing'
      : `it is known to ± ${Math.round((100 * U) / Math.abs(value))} % only`
  return `Picked by hand from so far off that ${known}. Cancel, go close with Z, and pick it there.`
}
