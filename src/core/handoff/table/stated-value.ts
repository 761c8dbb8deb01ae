import type { Unit } from '../../job/model/types.ts'
import type { TableRow } from '../../ledger/table/table.ts'
import type { QuantityKind } from '../../quantity/quantity-kind.ts'
import { plainText } from '../../words/plain-text.ts'
import { twoFigures } from './rounding.ts'

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

/** What follows a number of this kind of dimension in the table's unit: `"`, ` mm`, ` sq in`, ` mm²`, `°`. */
export function unitSuffix(kind: QuantityKind, unit: Unit): string {
  if (kind === 'angle') return '°'
  if (kind === 'area') return unit === 'in' ? ' sq in' : ' mm²'
  if (kind === 'count') return ''
  return unit === 'in' ? '"' : ' mm'
}
