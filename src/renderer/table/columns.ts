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
  count: 'no.',
  why: 'why',
}

/** What a column of the table can be changed to where it stands. */
export const EDITABLE: ReadonlySet<ColumnName> = new Set(['name', 'label', 'count'])

/** Pixels: below this width of the table its labels are left to the tooltip and the card. */
const WIDE = 1000

const NARROW: readonly ColumnName[] = COLUMNS.filter((column) => column !== 'label')

/** The columns that a table of this width has room for; the same array for the same columns. */
export const columnsFor = (width: number): readonly ColumnName[] => (width >= WIDE ? COLUMNS : NARROW)
