import { statedValue } from '../../core/handoff/table/stated-value.ts'
import { basisWord } from '../../core/job/ids/basis-word.ts'
import type { Unit } from '../../core/job/model/types.ts'
import type { TableRow } from '../../core/ledger/table/table.ts'
import type { Found } from '../entering/readings-in-line.ts'
import { Figure } from '../parts/figure.tsx'
import { BasisSample } from './basis-sample.tsx'
import type { ColumnName } from './columns.ts'
import { OriginalCell, wholeOriginal } from './original-cell.tsx'
import { StatusMark } from './status-mark.tsx'

interface TableCellProps {
  row: TableRow
  column: ColumnName
  /** That the table is in. */
  unit: Unit
  /** That stand in the column of the original. */
  readings: Found | undefined
  /** Whether its name has a column of its own; else it follows what it names. */
  named: boolean
}

/** What stands in one cell of the table: the same words as in the table of the command line. */
export function TableCell({ row, column, unit, readings, named }: TableCellProps) {
  switch (column) {
    case 'name':
      return <span className="table-grid-name">{row.name}</span>
    case 'label':
      return named ? (
        row.label
      ) : (
        <span className="table-grid-both">
          <span className="table-grid-label">{row.label}</span>{' '}
          <span className="table-grid-name-behind">{row.name}</span>
        </span>
      )
    case 'original':
      return readings === undefined ? '' : <OriginalCell row={row} readings={readings} unit={unit} />
    case 'figure':
      return <Figure text={statedValue(row, unit)} />
    case 'basis':
      return (
        <span className="table-grid-basis">
          <BasisSample basis={row.basis} />
          <span className="table-grid-basis-word">{row.basis === null ? '—' : basisWord(row.basis)}</span>
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
export function wholeText(
  row: TableRow,
  column: ColumnName,
  unit: Unit,
  readings: Found | undefined,
): string | undefined {
  switch (column) {
    case 'name':
      return `${row.name}: ${row.label}`
    case 'label':
      return `${row.label}: ${row.name}`
    case 'original':
      return readings === undefined ? undefined : wholeOriginal(row, readings, unit)
    case 'figure':
      return statedValue(row, unit)
    case 'why':
      return row.why
    default:
      return undefined
  }
}
