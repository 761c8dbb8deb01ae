import type { TableRow } from '../../core/ledger/table/table.ts'
import { QUANTITY_KINDS } from '../../core/quantity/quantity-kind.ts'
import type { ColumnName } from './columns.ts'

const STATUS_ORDER = ['disputed', 'open', 'single', 'agreed']
const BASIS_ORDER = ['printed', 'scaled', 'found', 'derived', 'mean']

/** As people count: hole_2 before hole_10, and no difference between cases. */
const words = new Intl.Collator('en-GB', { numeric: true, sensitivity: 'base' })

const place = (order: readonly string[], word: string | null): number => {
  const at = word === null ? -1 : order.indexOf(word)
  return at < 0 ? order.length : at
}

/** Which of two rows comes first, by one column; below 0: the first. What needs a look comes before what is settled. */
export function compareRows(a: TableRow, b: TableRow, column: ColumnName): number {
  switch (column) {
    case 'name':
      return words.compare(a.name, b.name)
    case 'label':
      return words.compare(a.label, b.label)
    case 'basis':
      return place(BASIS_ORDER, a.basis) - place(BASIS_ORDER, b.basis)
    case 'status':
      return place(STATUS_ORDER, a.status) - place(STATUS_ORDER, b.status)
    case 'count':
      return a.count - b.count
    case 'why':
      return words.compare(a.why, b.why)
    case 'figure':
      return bySize(a, b)
    case 'original':
      return Number(!isMeasured(a)) - Number(!isMeasured(b)) || bySize(a, b)
  }
}

/** Whether readings on the original give it a value. */
const isMeasured = ({ evidence }: TableRow): boolean =>
  evidence.some(({ basis, value }) => basis === 'found' && value !== null)

/** Lengths with lengths and angles with angles; a row without a value comes after those of its kind. */
function bySize(a: TableRow, b: TableRow): number {
  const kinds = place(QUANTITY_KINDS, a.kind) - place(QUANTITY_KINDS, b.kind)
  if (kinds !== 0) return kinds
  if (a.value === null || b.value === null) return Number(a.value === null) - Number(b.value === null)
  return a.value - b.value
}
