import {
  columnFilteringFeature,
  createFilteredRowModel,
  createSortedRowModel,
  globalFilteringFeature,
  rowSortingFeature,
  tableFeatures,
  useTable,
} from '@tanstack/react-table'
import type { TableRow } from '../../core/ledger/table/table.ts'
import { COLUMNS, type ColumnName } from './columns.ts'
import { compareRows } from './row-order.ts'
import { rowHas } from './row-search.ts'

const features = tableFeatures({
  rowSortingFeature,
  columnFilteringFeature,
  globalFilteringFeature,
  sortedRowModel: createSortedRowModel(),
  filteredRowModel: createFilteredRowModel(),
})

type Features = typeof features

interface RowOf {
  original: TableRow
}

const columns = COLUMNS.map((id) => ({
  id,
  accessorFn: (row: TableRow) => (id === 'basis' ? (row.basis ?? 'none') : id === 'status' ? row.status : ''),
  enableSorting: id !== 'why',
  sortDescFirst: false,
  sortFn: (a: RowOf, b: RowOf) => compareRows(a.original, b.original, id),
  filterFn: (row: RowOf, _: string, kept: readonly string[]) => {
    const word = id === 'basis' ? (row.original.basis ?? 'none') : row.original.status
    return kept.length === 0 || kept.includes(word)
  },
}))

const NO_ROWS: TableRow[] = []

/** The rows in the order and choice that a person set; both outlive edits, for they are kept apart from the rows. */
export function useDimensionRows(rows: TableRow[] | undefined) {
  const table = useTable<Features, TableRow>({
    features,
    columns,
    data: rows ?? NO_ROWS,
    getRowId: (row) => row.name,
    globalFilterFn: (row: RowOf, _: string, sought: string) => rowHas(row.original, sought),
    getColumnCanGlobalFilter: (column: { id: string }) => column.id === 'name',
  })
  const { sorting, columnFilters, globalFilter } = table.state
  const [sorted] = sorting
  const keptIn = (column: ColumnName): readonly string[] =>
    (columnFilters.find(({ id }) => id === column)?.value as readonly string[] | undefined) ?? []
  return {
    rows: table.getRowModel().rows,
    sorted: sorted === undefined ? null : { column: sorted.id as ColumnName, down: sorted.desc },
    /** Up, down, and then as the job has them. */
    sortBy: (column: ColumnName) => table.getColumn(column)?.toggleSorting(undefined, false),
    sought: typeof globalFilter === 'string' ? globalFilter : '',
    seek: (text: string) => table.setGlobalFilter(text),
    keptIn,
    keep: (column: ColumnName, words: readonly string[]) =>
      table.getColumn(column)?.setFilterValue(words.length === 0 ? undefined : words),
    narrowed: (typeof globalFilter === 'string' && globalFilter.trim() !== '') || columnFilters.length > 0,
    showAll: () => {
      table.setGlobalFilter('')
      table.setColumnFilters([])
    },
  }
}

export type DimensionRows = ReturnType<typeof useDimensionRows>
