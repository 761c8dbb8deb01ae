// biome-ignore-all lint/a11y/useSemanticElements: the elements of a table can't have rows that are placed one by one
// biome-ignore-all lint/a11y/useFocusableInteractive: the grid has the focus and names the cell that is active
// biome-ignore-all lint/a11y/useKeyWithClickEvents: the grid hears the keys
import { memo } from 'react'
import type { Unit } from '../../core/job/model/types.ts'
import type { TableRow as Row } from '../../core/ledger/table/table.ts'
import type { AnyReason } from '../../core/words/reason.ts'
import type { Found } from '../entering/readings-in-line.ts'
import { CellEditor, type CellLeft } from './cell-editor.tsx'
import { CellVerdict } from './cell-verdict.tsx'
import { type ColumnName, HEADINGS } from './columns.ts'
import { TableCell, wholeText } from './table-cell.tsx'
import type { Editing } from './use-cell-editing.ts'

/** What can be done in a row; the same object for every row and for good, so that a row is only drawn when it changes. */
export interface RowActions {
  press: (index: number, column: number) => void
  open: (index: number, column: number) => void
  keep: (text: string, left: CellLeft) => AnyReason | null
  giveUp: () => void
  goesOn: (left: CellLeft) => boolean
}

interface TableRowProps {
  row: Row
  index: number
  /** Pixels from the top of the rows. */
  top: number
  height: number
  columns: readonly ColumnName[]
  unit: Unit
  /** The readings that stand in its column of the original. */
  readings: Found | undefined
  chosen: boolean
  /** The column of the cell that the keyboard is at, when that is in this row. */
  active: number | null
  /** What the ids of its cells begin with. */
  id: string
  editing: Editing | null
  actions: RowActions
}

/** One dimension. */
export const TableRow = memo(function TableRow(props: TableRowProps) {
  const { row, index, columns, unit, readings, chosen, active, editing, actions } = props
  const named = columns.includes('name')
  return (
    <div
      role="row"
      className="table-row"
      aria-rowindex={index + 2}
      aria-selected={chosen}
      data-name={row.name}
      data-status={row.status}
      style={{ height: props.height, transform: `translateY(${props.top}px)` }}
    >
      {columns.map((column, place) => (
        <div
          key={column}
          role="gridcell"
          id={`${props.id}-${place}`}
          className="table-cell"
          aria-colindex={place + 1}
          data-column={column}
          data-active={active === place || undefined}
          title={editing?.column === column ? undefined : wholeText(row, column, unit, readings)}
          onClick={() => actions.press(index, place)}
          onDoubleClick={() => actions.open(index, place)}
        >
          {editing?.column === column ? (
            <CellEditor
              label={`${HEADINGS[column]} of ${row.name}`}
              text={editing.text}
              writing={editing.writing}
              now={editing.now ?? editing.text}
              takesKeyboard={editing.refused !== true}
              verdict={(text) => <CellVerdict name={row.name} column={column} text={text} unit={unit} />}
              onKeep={actions.keep}
              onGiveUp={actions.giveUp}
              goesOn={actions.goesOn}
            />
          ) : (
            <TableCell row={row} column={column} unit={unit} readings={readings} named={named} />
          )}
        </div>
      ))}
    </div>
  )
})
