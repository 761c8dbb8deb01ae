// biome-ignore-all lint/a11y/useSemanticElements: the elements of a table can't have rows that are placed one by one
import './table-grid.css'
import { defaultRangeExtractor, type Range, useVirtualizer } from '@tanstack/react-virtual'
import { type KeyboardEvent, useCallback, useEffect, useId, useRef, useState } from 'react'
import type { Edit } from '../../core/job/edits/edit.ts'
import type { Unit } from '../../core/job/model/types.ts'
import { useBench } from '../bench/bench-store.ts'
import { choose } from '../bench/choose.ts'
import { makeEdit } from '../bench/edits.ts'
import { useWidth } from '../parts/use-width.ts'
import { changeInPlace, textInPlace } from './change-in-place.ts'
import { columnsFor, EDITABLE } from './columns.ts'
import { cellAfterKey, type GridCell } from './grid-keys.ts'
import { TableHead } from './table-head.tsx'
import { type Editing, type RowActions, TableRow } from './table-row.tsx'
import type { DimensionRows } from './use-dimension-rows.ts'
import { useSteady } from './use-steady.ts'

/** Pixels. Rows are all alike, so that a thousand of them are placed without being measured. */
const ROW = 26

interface TableGridProps {
  rows: DimensionRows
  unit: Unit
}

/** The rows, as one grid that is gone through by keyboard; only those in sight are drawn. */
export function TableGrid({ rows: shown, unit }: TableGridProps) {
  const { rows } = shown
  const box = useRef<HTMLDivElement>(null)
  const width = useWidth(box)
  const columns = columnsFor(width)
  const id = useId()
  const [active, setActive] = useState<GridCell>({ row: 0, column: 0 })
  const [editing, setEditing] = useState<Editing | null>(null)
  const chosen = useBench(({ selection }) => (selection?.kind === 'dimension' ? selection.name : null))
  const writable = useBench(({ opened }) => opened?.writable === true)

  const at: GridCell = {
    row: Math.min(active.row, rows.length - 1),
    column: Math.min(active.column, columns.length - 1),
  }
  const withActive = useCallback(
    (range: Range) => {
      const indices = defaultRangeExtractor(range)
      return at.row < 0 || indices.includes(at.row) ? indices : [...indices, at.row].sort((a, b) => a - b)
    },
    [at.row],
  )
  const keyOf = useCallback((index: number) => rows[index]?.id ?? index, [rows])
  const virtual = useVirtualizer({
    count: rows.length,
    getScrollElement: () => box.current,
    estimateSize: () => ROW,
    scrollMargin: ROW,
    scrollPaddingStart: ROW,
    overscan: 8,
    rangeExtractor: withActive,
    getItemKey: keyOf,
  })

  const chosenAt = chosen === null ? -1 : rows.findIndex((row) => row.id === chosen)
  const latest = useRef({ chosenAt, virtual })
  latest.current = { chosenAt, virtual }
  // biome-ignore lint/correctness/useExhaustiveDependencies: only another choice brings its row in sight, not a sort
  useEffect(() => {
    const { chosenAt: row, virtual: rowsInSight } = latest.current
    if (row < 0) return
    rowsInSight.scrollToIndex(row)
    setActive((was) => ({ row, column: was.column }))
  }, [chosen])

  const rowId = (row: number) => `${id}-${row < 0 ? 'head' : row}`
  const nameAt = (row: number): string | undefined => rows[row]?.id

  const pick = (row: number) => {
    const name = nameAt(row)
    if (name !== undefined) choose({ kind: 'dimension', name })
  }
  const go = (to: GridCell) => {
    setActive(to)
    if (to.row >= 0) virtual.scrollToIndex(to.row)
    if (chosen !== null && to.row !== at.row && to.row >= 0) pick(to.row)
  }
  const edit = (row: number, column: number): boolean => {
    const name = nameAt(row)
    const which = columns[column]
    const job = useBench.getState().opened?.job
    if (!writable || name === undefined || which === undefined || job === undefined) return false
    if (!EDITABLE.has(which) || !job.dimensions.some((d) => d.name === name)) return false
    setEditing({ name, column: which, text: textInPlace(job, name, which) })
    return true
  }
  const ended = () => {
    setEditing(null)
    box.current?.focus({ preventScroll: true })
  }
  const keep = (text: string, byKey: boolean): string | null => {
    const job = useBench.getState().opened?.job
    if (editing === null || job === undefined) return null
    const change = changeInPlace(job, editing.name, editing.column, text)
    if (change !== null && 'sentence' in change) return change.sentence
    if (byKey) ended()
    else setEditing(null)
    if (change !== null) void keepWritten(change.edit, { ...editing, text, refused: true })
    return null
  }
  /** Makes an edit; what was written for it stands in its cell again when it is refused. */
  const keepWritten = async (change: Edit, written: Editing) => {
    if (!(await makeEdit(change))) setEditing((now) => now ?? written)
  }
  const sortBy = (column: number) => {
    const which = columns[column]
    if (which !== undefined && which !== 'why') shown.sortBy(which)
  }

  const actions = useSteady<RowActions>({
    press: (row, column) => {
      setActive({ row, column })
      pick(row)
    },
    open: (row, column) => void edit(row, column),
    keep,
    giveUp: ended,
  })

  const onKeyDown = (event: KeyboardEvent) => {
    if (event.target !== box.current || event.altKey || event.metaKey) return
    const page = Math.max(1, Math.floor(((box.current?.clientHeight ?? 0) - ROW) / ROW) - 1)
    const size = { rows: rows.length, columns: columns.length, page }
    const to = cellAfterKey(at, event.key, event.ctrlKey, size)
    if (to !== null) {
      event.preventDefault()
      go(to)
      return
    }
    switch (event.key) {
      case 'F2':
        edit(at.row, at.column)
        break
      case 'Enter':
      case ' ':
        if (at.row < 0) sortBy(at.column)
        else if (event.key === ' ' || !edit(at.row, at.column)) pick(at.row)
        break
      case 'Escape':
        if (chosen === null) return
        choose(null)
        break
      default:
        return
    }
    event.preventDefault()
  }

  const scrolled = virtual.scrollOffset ?? 0
  const middle = scrolled + ((box.current?.clientHeight ?? 0) - ROW) / 2
  return (
    <div
      ref={box}
      role="grid"
      className="table-grid"
      aria-label="Dimensions"
      aria-rowcount={rows.length + 1}
      aria-colcount={columns.length}
      aria-readonly={!writable}
      aria-activedescendant={`${rowId(at.row)}-${at.column}`}
      tabIndex={0}
      data-columns={columns.length}
      onKeyDown={onKeyDown}
    >
      <TableHead
        columns={columns}
        sorted={shown.sorted}
        active={at.row < 0 ? at.column : null}
        id={rowId(-1)}
        onPress={(column) => {
          setActive({ row: -1, column })
          sortBy(column)
        }}
      />
      <div role="rowgroup" className="table-grid-rows" style={{ height: virtual.getTotalSize() }}>
        {virtual.getVirtualItems().map(({ index, start }) => {
          const row = rows[index]
          if (row === undefined) return null
          return (
            <TableRow
              key={row.id}
              row={row.original}
              index={index}
              top={start - ROW}
              height={ROW}
              columns={columns}
              unit={unit}
              chosen={row.id === chosen}
              active={at.row === index ? at.column : null}
              id={rowId(index)}
              editing={editing?.name === row.id ? editing : null}
              low={start > middle}
              actions={actions}
            />
          )
        })}
      </div>
    </div>
  )
}
