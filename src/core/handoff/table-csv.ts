import type { Table, TableRow } from '../ledger/table.ts'
import { plainText } from './plain-text.ts'

const FORMULA_START = /^[=+\-@\t\r]/
const PLAIN_NUMBER = /^[+-]?\d+(\.\d+)?$/

/**
 * A text so that no spreadsheet takes it for a formula: what begins like one gets an apostrophe before it, which
 * spreadsheets read as "this is text". A plain number is left alone.
 */
export const disarmed = (text: string): string =>
  FORMULA_START.test(text) && !PLAIN_NUMBER.test(text) ? `'${text}` : text

/** One cell, quoted where it has to be (RFC 4180, section 2, rules 5 to 7). */
const cell = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text)

const COLUMNS: readonly (readonly [
  heading: string,
  content: (row: TableRow, table: Table) => string | number | null,
])[] = [
  ['name', (row) => row.name],
  ['label', (row) => row.label],
  ['kind', (row) => row.kind],
  ['count', (row) => row.count],
  ['value', (row) => row.value],
  ['unit', (row, table) => unitOf(row, table)],
  ['written', (row) => row.written],
  ['u', (row) => row.u],
  ['U', (row) => row.U],
  ['k', (row) => row.k],
  ['dof', (row) => row.dof],
  ['basis', (row) => row.basis],
  ['status', (row) => row.status],
  ['tolerance', (row) => row.tolerance ?? null],
  ['why', (row) => row.why],
]

const unitOf = (row: TableRow, table: Table): string => {
  if (row.kind === 'angle') return 'deg'
  if (row.kind === 'count') return ''
  return row.kind === 'area' ? `${table.unit}2` : table.unit
}

const record = (contents: readonly (string | number | null)[]): string =>
  `${contents
    .map((content) => {
      if (content === null) return ''
      if (typeof content === 'number') return Number.isFinite(content) ? String(content) : ''
      return cell(disarmed(plainText(content)))
    })
    .join(',')}\r\n`

/**
 * The rows of a table as comma-separated values after RFC 4180: one heading record, CRLF line ends, UTF-8 without
 * a byte-order mark, numbers with a decimal point and all their digits; an empty cell is "none" (value) or
 * "infinite" (dof). The cautions follow as records whose first cell begins with `#`, which no dimension's name
 * can; they have as many cells as every other record, so a strict reader takes the file and one that knows
 * comment lines skips them.
 */
export function tableCsv(table: Table): string {
  const headings = record(COLUMNS.map(([heading]) => heading))
  const rows = table.rows.map((row) => record(COLUMNS.map(([, content]) => content(row, table))))
  const cautions = table.cautions.map((caution) =>
    record(COLUMNS.map((_, column) => (column === 0 ? '# caution' : column === 1 ? caution : null))),
  )
  return [headings, ...rows, ...cautions].join('')
}
