import type { Unit } from '../../job/model/types.ts'
import type { TableRow } from '../../ledger/table/table.ts'
import { plainText } from '../../words/plain-text.ts'
import { twoFigures } from './two-figures.ts'
import { unitSuffix } from './unit-suffix.ts'

/**
 * An adopted value as a shop reads it: the figure, ± U at 95 % when it has one, and the tolerance when one is
 * stated: `14 3/8"`, `14.37" ± 0.031"`, `14 3/8" (tolerance ±1/32)`. `—` when there is no usable evidence.
 */
export function statedValue(row: TableRow, unit: Unit): string {
  if (row.value === null) return '—'
  const figure = plainText(row.written)
  const spread = row.U > 0 ? ` ± ${twoFigures(row.U)}${unitSuffix(row.kind, unit)}` : ''
  const tolerance = row.tolerance === undefined ? '' : ` (tolerance ${plainText(row.tolerance)})`
  return `${figure}${spread}${tolerance}`
}
