import { useEffect, useRef } from 'react'
import { useBench } from '../bench/bench-store.ts'
import type { DimensionRows } from './use-dimension-rows.ts'

/**
 * The name of the dimension that is chosen; null when none is.
 * @param onChoice called with its row when another is chosen, here or anywhere else in the window
 */
export function useChosenRow(rows: DimensionRows['rows'], onChoice: (row: number) => void): string | null {
  const chosen = useBench(({ selection }) => (selection?.kind === 'dimension' ? selection.name : null))
  const row = chosen === null ? -1 : rows.findIndex(({ id }) => id === chosen)
  const latest = useRef({ row, onChoice })
  latest.current = { row, onChoice }
  // One that was only just made is chosen before the table has its row.
  const isThere = row >= 0
  // biome-ignore lint/correctness/useExhaustiveDependencies: only another choice brings its row in sight, not a sort
  useEffect(() => {
    if (isThere) latest.current.onChoice(latest.current.row)
  }, [chosen, isThere])
  return chosen
}
