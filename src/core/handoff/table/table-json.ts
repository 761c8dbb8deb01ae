import type { Table } from '../../ledger/table/table.ts'

/** The table itself, as JSON text with a line break at the end. */
export const tableJson = (table: Table): string => `${JSON.stringify(table, null, 2)}\n`
