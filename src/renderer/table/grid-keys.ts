/** A cell of a grid: row -1 is the head. */
export interface GridCell {
  row: number
  column: number
}

interface GridSize {
  rows: number
  columns: number
  /** Rows that are in sight at once. */
  page: number
}

/** What a key asks for at a cell; `change or choose`: to choose the row where the cell can't be changed. */
type KeyWish =
  | { to: 'move'; cell: GridCell }
  | { to: 'change' }
  | { to: 'change or choose' }
  | { to: 'choose' }
  | { to: 'sort' }
  | { to: 'choose nothing' }

/** What a key asks for at a cell of the grid; null when it is none of the grid's. */
export function wishOfKey(at: GridCell, key: string, ctrl: boolean, size: GridSize): KeyWish | null {
  const cell = cellAfterKey(at, key, ctrl, size)
  if (cell !== null) return { to: 'move', cell }
  switch (key) {
    case 'F2':
      return { to: 'change' }
    case 'Enter':
      return { to: at.row < 0 ? 'sort' : 'change or choose' }
    case ' ':
      return { to: at.row < 0 ? 'sort' : 'choose' }
    case 'Escape':
      return { to: 'choose nothing' }
    default:
      return null
  }
}

/** Where a key moves to from a cell; null when it is no key that moves. */
function cellAfterKey(from: GridCell, key: string, ctrl: boolean, size: GridSize): GridCell | null {
  const lastRow = size.rows - 1
  const lastColumn = size.columns - 1
  const to = (row: number, column: number): GridCell => ({
    row: Math.max(-1, Math.min(row, lastRow)),
    column: Math.max(0, Math.min(column, lastColumn)),
  })
  const firstRow = Math.min(0, lastRow)
  switch (key) {
    case 'ArrowUp':
      return ctrl ? to(firstRow, from.column) : to(from.row - 1, from.column)
    case 'ArrowDown':
      return ctrl ? to(lastRow, from.column) : to(from.row + 1, from.column)
    case 'ArrowLeft':
      return ctrl ? to(from.row, 0) : to(from.row, from.column - 1)
    case 'ArrowRight':
      return ctrl ? to(from.row, lastColumn) : to(from.row, from.column + 1)
    case 'Home':
      return ctrl ? to(firstRow, 0) : to(from.row, 0)
    case 'End':
      return ctrl ? to(lastRow, lastColumn) : to(from.row, lastColumn)
    case 'PageUp':
      return to(Math.max(firstRow, from.row - size.page), from.column)
    case 'PageDown':
      return to(Math.max(firstRow, from.row + size.page), from.column)
    default:
      return null
  }
}

/**
 * Whether a key writes what a reading begins with, so that writing in its cell begins with it. Not over readings that are
 * there: a digit that was meant for a tool would take their place unseen.
 * @param written whether the cell has readings
 */
export const beginsReading = (key: string, ctrl: boolean, written: boolean): boolean =>
  !ctrl && !written && /^[\d.,+\-−¼-¾⅐-⅞]$/.test(key)
