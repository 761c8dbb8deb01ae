import type { Unit } from '../../job/model/types.ts'
import type { TableRow } from '../../ledger/table/table.ts'
import { plusMinus } from '../../ledger/units/plus-minus.ts'
import { plainText } from '../../words/plain-text.ts'

/**
 * What follows a value that is uncertain: ` ± 0.075"`, or `, 445 mm to 1074 mm` where first order does not hold; nothing
 * where nothing is uncertain.
 */
export const spreadOf = (
  { U, interval }: Pick<TableRow, 'U' | 'interval'>,
  kind: TableRow['kind'],
  unit: Unit,
): string => (interval === undefined ? plusMinus(U, kind, unit) : `, ${plainText(interval.written)}`)

/** Beside what was worked out from exact figures alone. */
export const FROM_FIGURES = ', from printed figures'

/**
 * An adopted value as a shop reads it: the figure, and the tolerance when one is stated, `14 3/8" (tolerance ±1/32)`;
 * of what is no figure the value, ± U at 95 % (or what it is between, `626 mm, 445 mm to 1074 mm`, where first order
 * does not hold) and the figure that it is near, `11.493" ± 0.075", near 11 1/2"`; and whether it was worked out from
 * figures alone, `27.292", from printed figures`. `—` when there is no usable evidence.
 */
export function statedValue(row: TableRow, unit: Unit): string {
  if (row.value === null) return '—'
  const figure = plainText(row.written)
  const tolerance = row.tolerance === undefined ? '' : ` (tolerance ${plainText(row.tolerance)})`
  const figured = row.figured === true ? FROM_FIGURES : ''
  return `${figure}${spreadOf(row, row.kind, unit)}${nearText(row)}${figured}${tolerance}`
}

/** `, near 8"`; where it may be others as well, `, near 11 1/2" (11 7/16" to 11 9/16")`. */
function nearText({ near, nearRange }: TableRow): string {
  if (near === undefined) return ''
  const others = nearRange === undefined ? '' : ` (${nearRange.map(plainText).join(' to ')})`
  return `, near ${plainText(near)}${others}`
}
