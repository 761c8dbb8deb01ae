import type { Status, TableRow } from '../../core/ledger/table/table.ts'
import { useBench } from '../bench/bench-store.ts'
import { choose } from '../bench/choose.ts'

/** What is gone to by which key. */
export const NEXT_KEYS = [
  { status: 'disputed', key: 'D' },
  { status: 'open', key: 'V' },
  { status: 'single', key: 'U' },
] as const satisfies readonly { status: Status; key: string }[]

type Ordered = Pick<TableRow, 'name' | 'status'>

let rows: readonly Ordered[] = []

/** The rows that the table shows, in its order. */
export function setRowsInOrder(shown: readonly Ordered[]): void {
  rows = shown
}

/**
 * The next row with a status, after the one that is chosen and round from the last to the first; null when there is none.
 * @param way 1 down the table, -1 up
 */
export function nextRow(
  shown: readonly Ordered[],
  chosen: string | null,
  status: Status,
  way: 1 | -1,
): string | null {
  const from = shown.findIndex(({ name }) => name === chosen)
  // From nowhere, up begins at the last.
  const start = from < 0 && way < 0 ? shown.length : from
  for (let step = 1; step <= shown.length; step++) {
    const row = shown[(start + way * step + 2 * shown.length) % shown.length]
    if (row?.status === status) return row.name
  }
  return null
}

/** Chooses that row, which brings it in sight in the table and on the sheet; false when there is none. */
export function goToNext(status: Status, way: 1 | -1): boolean {
  const { selection } = useBench.getState()
  const name = nextRow(rows, selection?.kind === 'dimension' ? selection.name : null, status, way)
  if (name === null) return false
  choose({ kind: 'dimension', name })
  return true
}
