import { statedValue } from '../../../src/core/handoff/table/stated-value.ts'
import { basisWord } from '../../../src/core/job/ids/basis-word.ts'
import type { Table } from '../../../src/core/ledger/table/table.ts'
import { statusWord } from '../../../src/core/words/status-word.ts'
import { tableByCommand } from './program.ts'
import type { ShownRow } from './table-in-window.ts'

/** The table of a job folder by the command line, its rows in the words that the window has for them. */
export async function commandRows(folder: string): Promise<ShownRow[]> {
  const table = JSON.parse(await tableByCommand(folder)) as Table
  return table.rows.map((row) => ({
    name: row.name,
    what: row.label,
    'figure ± U (95 %)': statedValue(row, table.unit),
    basis: row.basis === null ? '—' : basisWord(row.basis),
    status: [
      statusWord(row.status),
      ...(row.unchecked ? ['on a scale that nothing checks or that may be wrong'] : []),
      ...(row.sumsOut ? ['part of a sum that does not add up'] : []),
    ].join(', '),
    off: String(row.count),
    why: row.why,
  }))
}
