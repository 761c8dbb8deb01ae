import type { Table, TableRow } from '../../ledger/table/table.ts'
import { tabbedCell } from './csv-cell.ts'
import { rowContents, TABLE_HEADINGS } from './table-csv.ts'

/**
 * Rows of a table as lines of cells that tabs part, as a spreadsheet takes them from the clipboard: a head row, then the
 * columns of `tableCsv`, each cell in one line.
 * @param rows which of them, in this order
 */
export function tableTabbed(table: Table, rows: readonly TableRow[] = table.rows): string {
  const line = (contents: readonly (string | number | null)[]): string => contents.map(tabbedCell).join('\t')
  return `${[line(TABLE_HEADINGS), ...rows.map((row) => line(rowContents(row, table)))].join('\n')}\n`
}
