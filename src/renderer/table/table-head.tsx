// biome-ignore-all lint/a11y/useSemanticElements: the elements of a table can't have rows that are placed one by one
// biome-ignore-all lint/a11y/useFocusableInteractive: the grid has the focus and names the cell that is active
// biome-ignore-all lint/a11y/useKeyWithClickEvents: the grid hears the keys
import { type ColumnName, HEADINGS } from './columns.ts'
import { OriginalHead } from './original-head.tsx'
import type { DimensionRows } from './use-dimension-rows.ts'

interface TableHeadProps {
  columns: readonly ColumnName[]
  sorted: DimensionRows['sorted']
  active: number | null
  /** What the ids of its cells begin with. */
  id: string
  onPress: (column: number) => void
}

/** The head of the grid: a press or Enter on a heading sorts by it. */
export function TableHead({ columns, sorted, active, id, onPress }: TableHeadProps) {
  return (
    <div role="row" className="table-row table-head" aria-rowindex={1}>
      {columns.map((column, place) => (
        <div
          key={column}
          role="columnheader"
          id={`${id}-${place}`}
          className="table-cell table-head-cell"
          aria-colindex={place + 1}
          aria-sort={orderOf(column, sorted)}
          data-column={column}
          data-active={active === place || undefined}
          data-sorts={column === 'why' ? undefined : true}
          onClick={() => onPress(place)}
        >
          <span>{HEADINGS[column]}</span>
          {column !== 'why' && (
            <svg className="table-head-order" viewBox="0 0 8 10" aria-hidden="true" focusable="false">
              <path d={sorted?.down === true ? 'M1 4L4 8L7 4' : 'M1 6L4 2L7 6'} />
            </svg>
          )}
          {column === 'original' && <OriginalHead />}
        </div>
      ))}
    </div>
  )
}

function orderOf(column: ColumnName, sorted: DimensionRows['sorted']) {
  if (column === 'why') return undefined
  if (sorted?.column !== column) return 'none'
  return sorted.down ? 'descending' : 'ascending'
}
