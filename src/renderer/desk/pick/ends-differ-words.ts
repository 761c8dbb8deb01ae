import type { Unit } from '../../../core/job/model/types.ts'
import type { TableRow } from '../../../core/ledger/table/table.ts'
import { plusMinus } from '../../../core/ledger/units/plus-minus.ts'
import { plainText } from '../../../core/words/plain-text.ts'
import { inWords, reason } from '../../words/window-words.ts'

/**
 * That the two ends of a slot are not of one size; empty where they may be.
 * @param row with the diameters of both ends as its evidence
 */
export function endsDifferInWords({ status, evidence }: TableRow, unit: Unit): string {
  const [one, other] = evidence.map(
    ({ written, U }) => `${plainText(written)}${plusMinus(U, 'length', unit)}`,
  )
  if (status !== 'disputed' || one === undefined || other === undefined) return ''
  return inWords(reason('picked.ends-differ', { one, other }))
}
