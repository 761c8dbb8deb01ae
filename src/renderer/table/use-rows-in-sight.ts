import { defaultRangeExtractor, type Range, useVirtualizer } from '@tanstack/react-virtual'
import { type RefObject, useCallback } from 'react'
import type { DimensionRows } from './use-dimension-rows.ts'

/** Pixels. Rows and head are all alike, so that a thousand rows are placed without being measured. */
export const ROW_HEIGHT = 26

/** A row that is drawn. */
interface PlacedRow {
  index: number
  /** Pixels from the top of the rows. */
  top: number
}

/**
 * The rows to draw: those in sight or near it, and the active one wherever it is, since the grid names its cell.
 * @param box what the head and the rows scroll in
 * @param active the row that the keyboard is at; below 0: the head
 */
export function useRowsInSight(
  box: RefObject<HTMLElement | null>,
  rows: DimensionRows['rows'],
  active: number,
) {
  const withActive = useCallback(
    (range: Range) => {
      const indices = defaultRangeExtractor(range)
      return active < 0 || indices.includes(active) ? indices : [...indices, active].sort((a, b) => a - b)
    },
    [active],
  )
  const keyOf = useCallback((index: number) => rows[index]?.id ?? index, [rows])
  const virtual = useVirtualizer({
    count: rows.length,
    getScrollElement: () => box.current,
    estimateSize: () => ROW_HEIGHT,
    scrollMargin: ROW_HEIGHT,
    scrollPaddingStart: ROW_HEIGHT,
    overscan: 8,
    rangeExtractor: withActive,
    getItemKey: keyOf,
  })
  /** Pixels that rows are seen in, below the head. */
  const room = (): number => (box.current?.clientHeight ?? 0) - ROW_HEIGHT
  return {
    /** Pixels of all rows together. */
    height: virtual.getTotalSize(),
    placed: virtual
      .getVirtualItems()
      .map(({ index, start }): PlacedRow => ({ index, top: start - ROW_HEIGHT })),
    bringInSight: (row: number) => virtual.scrollToIndex(row),
    /** Rows that a page is turned by. */
    page: () => Math.max(1, Math.floor(room() / ROW_HEIGHT) - 1),
  }
}
