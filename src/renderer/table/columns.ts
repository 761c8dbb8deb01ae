/** The columns of the table, in order. */
export const COLUMNS = ['name', 'label', 'figure', 'basis', 'status', 'count', 'why'] as const

export type ColumnName = (typeof COLUMNS)[number]

/** As the command line heads them, so that both tables read alike. */
export const HEADINGS: Record<ColumnName, string> = {
  name: 'name',
  label: 'what',
  figure: 'figure ± U (95 %)',
  basis: 'basis',
  status: 'status',
  count: 'off',
  why: 'why',
}

/** What a column of the table can be changed to where it stands. */
export const EDITABLE: ReadonlySet<ColumnName> = new Set(['name', 'label', 'count'])

/** Pixels: below these widths of the table its labels, and then its reasons, are left to the card. */
const WIDE = 1000
const MIDDLING = 724

const WITHOUT_LABEL: readonly ColumnName[] = COLUMNS.filter((column) => column !== 'label')
const WITHOUT_WHY: readonly ColumnName[] = WITHOUT_LABEL.filter((column) => column !== 'why')

/** The columns that a table of this width has room for; the same array for the same columns. */
export function columnsFor(width: number): readonly ColumnName[] {
  if (width >= WIDE) return COLUMNS
  return width >= MIDDLING ? WITHOUT_LABEL : WITHOUT_WHY
}
