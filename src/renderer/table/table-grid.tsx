// biome-ignore-all lint/a11y/useSemanticElements: the elements of a table can't have rows that are placed one by one
import './table-grid.css'
import { type KeyboardEvent, useId, useMemo, useRef, useState } from 'react'
import type { Unit } from '../../core/job/model/types.ts'
import { useBench } from '../bench/bench-store.ts'
import { choose } from '../bench/choose.ts'
import { askForDimension } from '../entering/new-dimension-asked.ts'
import { readingsInLine } from '../entering/readings-in-line.ts'
import { useInstrumentAtHand } from '../instruments/at-hand.ts'
import { useWidth } from '../parts/use-width.ts'
import type { CellLeft } from './cell-editor.tsx'
import { isChangedInPlace } from './change-in-place.ts'
import { columnsFor, isTight } from './columns.ts'
import { beginsReading, type GridCell, wishOfKey } from './grid-keys.ts'
import { TableHead } from './table-head.tsx'
import { type RowActions, TableRow } from './table-row.tsx'
import { type Editing, useCellEditing } from './use-cell-editing.ts'
import { useChosenRow } from './use-chosen-row.ts'
import type { DimensionRows } from './use-dimension-rows.ts'
import { ROW_HEIGHT, useRowsInSight } from './use-rows-in-sight.ts'

interface TableGridProps {
  rows: DimensionRows
  unit: Unit
}

/**
 * Whether a digit is for something else than readings: a tool is in hand, whose next one it takes up, or readings that
 * were written just now are not in the job yet.
 */
function isDigitElsewhere(): boolean {
  const { keeping, picks } = useBench.getState()
  return keeping > 0 || picks.tool.kind !== 'look'
}

/** The rows, as one grid that is gone through by keyboard; only those in sight are drawn. */
export function TableGrid({ rows: shown, unit }: TableGridProps) {
  const { rows } = shown
  const box = useRef<HTMLDivElement>(null)
  const width = useWidth(box)
  const columns = columnsFor(width)
  const id = useId()
  const rowId = (row: number) => `${id}-${row < 0 ? 'head' : row}`
  const writable = useBench(({ opened }) => opened?.writable === true)
  const [active, setActive] = useState<GridCell>({ row: 0, column: 0 })
  const at: GridCell = {
    row: Math.min(active.row, rows.length - 1),
    column: Math.min(active.column, columns.length - 1),
  }
  const { height, placed, bringInSight, page } = useRowsInSight(box, rows, at.row)
  const chosen = useChosenRow(rows, (row) => {
    bringInSight(row)
    setActive((was) => ({ row, column: was.column }))
  })
  const dimensions = useBench(({ opened }) => opened?.job.dimensions)
  const byName = useMemo(() => new Map(dimensions?.map((one) => [one.name, one])), [dimensions])
  const instrument = useInstrumentAtHand()?.id
  const { editing, begin, keep, giveUp } = useCellEditing(
    () => box.current?.focus({ preventScroll: true }),
    goOnFrom,
  )

  const pick = (row: number) => {
    const name = rows[row]?.id
    if (name !== undefined) choose({ kind: 'dimension', name })
  }
  const change = ({ row, column }: GridCell) => begin(rows[row]?.id, columns[column])
  /** The cell that the keyboard goes on in; null: none. */
  function nextOf({ name, column }: Editing, left: CellLeft): GridCell | null {
    const row = rows.findIndex(({ id }) => id === name)
    const place = columns.indexOf(column)
    if (row < 0 || place < 0) return null
    // What is filled in down the rows is what was read off the original; elsewhere Enter ends.
    if (left === 'down') {
      return column === 'original' && row + 1 < rows.length ? { row: row + 1, column: place } : null
    }
    const job = useBench.getState().opened?.job
    for (let at = place + (left === 'back' ? -1 : 1); job !== undefined; at += left === 'back' ? -1 : 1) {
      const next = columns[at]
      if (next === undefined) break
      if (isChangedInPlace(job, name, next)) return { row, column: at }
    }
    return null
  }
  function goOnFrom(from: Editing, left: CellLeft): boolean {
    const next = nextOf(from, left)
    if (next === null) return false
    setActive(next)
    bringInSight(next.row)
    if (chosen !== null && next.row !== at.row) pick(next.row)
    return begin(rows[next.row]?.id, columns[next.column])
  }
  const sortBy = (column: number) => {
    const which = columns[column]
    if (which !== undefined && which !== 'why') shown.sortBy(which)
  }
  const go = (to: GridCell) => {
    setActive(to)
    if (to.row < 0) return
    bringInSight(to.row)
    if (chosen !== null && to.row !== at.row) pick(to.row)
  }
  const readingsOf = (name: string) => {
    const dimension = byName.get(name)
    return dimension === undefined ? undefined : readingsInLine(dimension, instrument)
  }
  const actions = useSteady<RowActions>({
    press: (row, column) => {
      setActive({ row, column })
      pick(row)
    },
    open: (row, column) => void change({ row, column }),
    keep,
    giveUp,
    goesOn: (left) => editing !== null && nextOf(editing, left) !== null,
  })
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.target !== box.current || event.altKey || event.metaKey) return
    if (event.key === 'Insert' && writable) {
      event.preventDefault()
      askForDimension()
      return
    }
    const size = { rows: rows.length, columns: columns.length, page: page() }
    const row = rows[at.row]?.id
    if (columns[at.column] === 'original' && row !== undefined) {
      if (beginsReading(event.key, event.ctrlKey, readingsOf(row) !== undefined || isDigitElsewhere())) {
        if (begin(row, 'original', event.key)) event.preventDefault()
        return
      }
    }
    const wish = wishOfKey(at, event.key, event.ctrlKey, size)
    if (wish === null || (wish.to === 'choose nothing' && chosen === null)) return
    event.preventDefault()
    switch (wish.to) {
      case 'move':
        return go(wish.cell)
      case 'sort':
        return sortBy(at.column)
      case 'change':
        return void change(at)
      case 'change or choose':
        if (!change(at)) pick(at.row)
        return
      case 'choose':
        return pick(at.row)
      case 'choose nothing':
        choose(null)
    }
  }

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
      data-tight={isTight(width) || undefined}
      data-unit={unit}
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
      <div role="rowgroup" className="table-grid-rows" style={{ height }}>
        {placed.map(({ index, top }) => {
          const row = rows[index]
          if (row === undefined) return null
          return (
            <TableRow
              key={row.id}
              row={row.original}
              index={index}
              top={top}
              height={ROW_HEIGHT}
              columns={columns}
              unit={unit}
              readings={readingsOf(row.id)}
              chosen={row.id === chosen}
              active={at.row === index ? at.column : null}
              id={rowId(index)}
              editing={editing?.name === row.id ? editing : null}
              actions={actions}
            />
          )
        })}
      </div>
    </div>
  )
}

/** The same functions for good that always do what the newest ones do. Not for use while rendering. */
function useSteady<T extends object>(newest: T): T {
  const current = useRef(newest)
  current.current = newest
  const steady = useRef<T | null>(null)
  steady.current ??= new Proxy(newest, { get: (_, name) => Reflect.get(current.current, name) })
  return steady.current
}
