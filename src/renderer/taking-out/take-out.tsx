import { tableCsv } from '../../core/handoff/table/table-csv.ts'
import { tableTabbed } from '../../core/handoff/table/table-tabbed.ts'
import type { TableRow } from '../../core/ledger/table/table.ts'
import { useBench } from '../bench/bench-store.ts'
import { tell } from '../bench/notices.ts'
import { download, fileNameOf } from '../desk/notes/download.ts'
import { Menu } from '../parts/menu.tsx'
import { copyText } from './copy-text.ts'

const WAYS = [
  { id: 'copy', label: 'Copy the rows' },
  { id: 'csv', label: 'CSV file…' },
  { id: 'print', label: 'Print…' },
] as const

interface TakeOutProps {
  /** Those that are shown, in the order shown. */
  rows: readonly TableRow[]
  /** Whether a newer table is being worked out. */
  working: boolean
}

/** Takes the table out of the window as it is looked at: to the clipboard, to a file, to paper. */
export function TakeOut({ rows, working }: TakeOutProps) {
  const table = useBench((bench) => bench.table)
  if (table === null || table.rows.length === 0) return null
  const take = (way: string): void => {
    if (working) {
      tell('told', 'The table is still being worked out. Take it out once that is done.')
      return
    }
    if (way === 'print') {
      // Once the menu is gone and has given the keyboard back.
      setTimeout(() => window.print())
    } else if (way === 'csv') {
      const name = fileNameOf(table.job, 'table.csv')
      download(name, tableCsv(table), 'text/csv;charset=utf-8')
      tell('told', `The table was written as ${name}.`)
    } else if (copyText(tableTabbed(table, rows))) {
      tell('told', `${copied(rows.length, table.rows.length)} Paste them into a spreadsheet.`)
    } else {
      tell('failed', 'The browser does not let the table be copied. Take it out as a CSV file.')
    }
  }
  return (
    <Menu
      label="Take the table out"
      words="Take out"
      icon="take-out"
      options={WAYS}
      value={null}
      onChange={take}
    />
  )
}

/** `41 rows are copied.`; `3 of 41 rows are copied, those that are shown.` */
const copied = (shown: number, all: number): string =>
  shown === all
    ? `${all} ${all === 1 ? 'row is' : 'rows are'} copied, with a head row.`
    : `${shown} of ${all} rows are copied, those that are shown, with a head row.`
