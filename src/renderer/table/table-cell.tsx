import { statedValue } from '../../core/handoff/table/stated-value.ts'
import { basisWord } from '../../core/job/ids/basis-word.ts'
import type { Unit } from '../../core/job/model/types.ts'
import type { TableRow } from '../../core/ledger/table/table.ts'
import { Figure } from '../parts/figure.tsx'
import { BasisSample } from './basis-sample.tsx'
import type { ColumnName } from './columns.ts'
import { StatusMark } from './status-mark.tsx'

interface TableCellProps {
  row: TableRow
  column: ColumnName
  /** That the table is in. */
  unit: Unit
}

/** What stands in one cell of the table: the same words as in the table of the command line. */
export function TableCell({ row, column, unit }: TableCellProps) {
  switch (column) {
    case 'name':
      return <span className="table-grid-name">{row.name}</span>
    case 'label':
      return row.label
    case 'figure':
      return <Figure text={statedValue(row, unit)} />
    case 'basis':
      return (
        <span className="table-grid-basis">
          <BasisSample basis={row.basis} />
          {row.basis === null ? '—' : basisWord(row.basis)}
        </span>
      )
    case 'status':
      return (
        <StatusMark
          status={row.status}
          sumOut={row.sumsOut !== undefined}
          unchecked={row.unchecked !== undefined}
        />
      )
    case 'count':
      return String(row.count)
    case 'why':
      return row.why
  }
}

/** All of a cell that may be cut off where it stands. */
export function wholeText(row: TableRow, column: ColumnName, unit: Unit): string | undefined {
  switch (column) {
    case 'name':
      return `${row.name}: ${row.label}`
    case 'label':
      return row.label
    case 'figure':
      return statedValue(row, unit)
    case 'why':
      return row.why
    default:
      return undefined
  }
}
