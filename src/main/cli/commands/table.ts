import { type Command, Option } from 'commander'
import type { Table } from '../../../core/ledger/table.ts'
import { fail, note, outputWidth, print } from '../output.ts'

const FORMATS = ['text', 'json', 'csv', 'md'] as const
type Format = (typeof FORMATS)[number]

const HELP = `
Reads only: nothing in the folder changes, and a job that somebody has open can be read too.
A view that can't be calibrated leaves its dimensions open; the table is printed, and the exit code is 2.

Examples:
  $ scantling table ventilator
  $ scantling table ventilator --format csv > ventilator.csv
  $ scantling table ventilator --format json | jq '.rows[] | select(.status == "disputed") | .name'`

async function written(table: Table, format: Format): Promise<string> {
  switch (format) {
    case 'text':
      return (await import('../../../core/handoff/table-text.ts')).tableText(table, outputWidth())
    case 'json':
      return (await import('../../../core/handoff/table-json.ts')).tableJson(table)
    case 'csv':
      return (await import('../../../core/handoff/table-csv.ts')).tableCsv(table)
    case 'md':
      return (await import('../../../core/handoff/table-markdown.ts')).tableMarkdown(table)
  }
}

export function addTableCommand(program: Command): void {
  program
    .command('table')
    .description('print the table of dimensions of a job')
    .argument('<FOLDER>', 'the job folder')
    .addOption(new Option('--format <FORMAT>', 'how it is written').choices(FORMATS).default('text'))
    .addHelpText('after', HELP)
    .action(async (folder: string, { format }: { format: Format }) => {
      const { readTable } = await import('../read-table.ts')
      const { table, warning, scanProblem, viewProblem } = await readTable(folder)
      if (scanProblem !== undefined) {
        fail(scanProblem)
        return
      }
      print(await written(table, format))
      if (viewProblem !== undefined) fail(viewProblem)
      else if (warning !== undefined) note(warning)
    })
}
