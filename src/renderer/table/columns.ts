/** The columns of the table, in order: what a person calls a thing leads, what formulas call it follows. */
export const COLUMNS = ['label', 'name', 'figure', 'original', 'basis', 'status', 'count', 'why'] as const

export type ColumnName = (typeof COLUMNS)[number]

/** As the command line heads them, so that both tables read alike; readings on the original stand in this one only. */
export const HEADINGS: Record<ColumnName, string> = {
  label: 'what',
  name: 'name',
  figure: 'figure ± U (95 %)',
  original: 'original',
  basis: 'basis',
  status: 'status',
  count: 'off',
  why: 'why',
}

/** What a column of the table can be changed to where it stands. */
export const EDITABLE: ReadonlySet<ColumnName> = new Set(['label', 'name', 'figure', 'original', 'count'])

/** Pixels: below these widths of the table its reasons are left to the card, and then the names follow what they name. */
const WIDE = 1100
const MIDDLING = 860
/** Below this a basis is told by its line alone. */
const TIGHT = 750

const WITHOUT_WHY: readonly ColumnName[] = COLUMNS.filter((column) => column !== 'why')
const WITHOUT_NAME: readonly ColumnName[] = WITHOUT_WHY.filter((column) => column !== 'name')

/** The columns that a table of this width has room for; the same array for the same columns. */
export function columnsFor(width: number): readonly ColumnName[] {
  if (width >= WIDE) return COLUMNS
  return width >= MIDDLING ? WITHOUT_WHY : WITHOUT_NAME
}

/** Whether a table of this width has room for the least only. */
export const isTight = (width: number): boolean => width > 0 && width < TIGHT
