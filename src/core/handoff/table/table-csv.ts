import type { Table, TableRow } from '../../ledger/table/table.ts'
import { countedDof } from './counted-dof.ts'
import { csvCell } from './csv-cell.ts'
import { misclosureText, relationState } from './view-lines.ts'

/** Significant digits of an uncertainty: two that count, and two so that working on adds no rounding of its own. */
const DIGITS = 4
/** Of an exact value: a millionth of the unit. */
const PLACES_OF_EXACT = 6

const toDigits = (x: number | null): number | null => (x === null ? null : Number(x.toPrecision(DIGITS)))

/** A value to the place of the last digit of its uncertainty that is given. */
function toGuarded(value: number, U: number): number {
  const places = U > 0 ? DIGITS - 1 - Math.floor(Math.log10(U)) : PLACES_OF_EXACT
  return Number(value.toFixed(Math.min(Math.max(places, 0), 12)))
}

type Content = (row: TableRow, table: Table) => string | number | null

/** Only where the row has a value: an open row says nothing of its uncertainty. */
const valued =
  (content: Content): Content =>
  (row, table) =>
    row.value === null ? null : content(row, table)

/** One end of what a value is between, where it lies unevenly in it. */
const end = ({ U }: TableRow, value: number | undefined): number | null =>
  value === undefined ? null : toGuarded(value, U)

const COLUMNS: readonly (readonly [heading: string, content: Content])[] = [
  ['name', (row) => row.name],
  ['label', (row) => row.label],
  ['kind', (row) => row.kind],
  ['count', (row) => row.count],
  ['value', (row) => (row.value === null ? null : toGuarded(row.value, row.U))],
  ['unit', (row, table) => unitOf(row, table)],
  ['written', valued((row) => row.written)],
  ['u', valued((row) => toDigits(row.u))],
  ['U', valued((row) => toDigits(row.U))],
  ['k', valued((row) => toDigits(row.k))],
  ['dof', valued((row) => toDigits(countedDof(row.dof)))],
  ['basis', (row) => row.basis],
  ['status', (row) => row.status],
  ['tolerance', (row) => row.tolerance ?? null],
  ['why', (row) => row.why],
  // Read without the rest of the row, a figure that others stand beside would be taken for the one.
  ['near', valued((row) => row.nearRange?.join(' to ') ?? row.near ?? null)],
  ['from', (row) => (row.figured === true ? 'printed figures' : null)],
  ['sum', (row) => (row.sumsOut === undefined ? null : 'out')],
  ['low', valued((row) => end(row, row.interval?.low))],
  ['high', valued((row) => end(row, row.interval?.high))],
]

const unitOf = (row: TableRow, table: Table): string => {
  if (row.kind === 'angle') return 'deg'
  if (row.kind === 'count') return ''
  return row.kind === 'area' ? `${table.unit}2` : table.unit
}

/** What heads each column of a table that is handed on as values. */
export const TABLE_HEADINGS: readonly string[] = COLUMNS.map(([heading]) => heading)

/** One row as it stands in those columns; null for none. */
export const rowContents = (row: TableRow, table: Table): (string | number | null)[] =>
  COLUMNS.map(([, content]) => content(row, table))

const record = (contents: readonly (string | number | null)[]): string =>
  `${contents.map(csvCell).join(',')}\r\n`

/** A record that is no dimension: its kind after `#` in the first cell, and what it says in the columns named. */
const remark = (kind: string, says: Readonly<Record<string, string>>): string =>
  record(TABLE_HEADINGS.map((heading) => (heading === 'name' ? `# ${kind}` : (says[heading] ?? null))))

/**
 * The rows of a table as comma-separated values after RFC 4180: one heading record, CRLF line ends, UTF-8 without
 * a byte-order mark, numbers with a decimal point: uncertainties to four significant digits, values to the same place. An empty cell is "none";
 * an open row has none in value, written, near, u, U, k, dof, low and high, and an empty dof beside a value is "more than 1,000".
 * Text that a spreadsheet would turn into something else gets an apostrophe before it (see `spreadsheetText`).
 *
 * After the rows come records whose first cell begins with `#`, which no dimension's name can; they have as many
 * cells as every other record, so a strict reader takes the file and one that knows comment lines skips them:
 * `# relation` with the relation in `label` (`Q1: overall = neck + rim`), `holds`, `does not hold` or `not checked`
 * in `status`, and by how much it misses, or why it was not checked, in `why`; and `# caution` with the caution in
 * `label`.
 */
export function tableCsv(table: Table): string {
  const headings = record(TABLE_HEADINGS)
  const rows = table.rows.map((row) => record(rowContents(row, table)))
  const relations = table.relations.map((relation) =>
    remark('relation', {
      label: `${relation.label ?? relation.id}: ${relation.text}`,
      status: relationState(relation),
      why: misclosureText(relation, table.unit),
    }),
  )
  const cautions = table.cautions.map((caution) => remark('caution', { label: caution }))
  return [headings, ...rows, ...relations, ...cautions].join('')
}
