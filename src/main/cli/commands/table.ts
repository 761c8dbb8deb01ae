import type { Command } from 'commander'
import type { Table } from '../../../core/ledger/table/table.ts'
import { FIGURES_AS, type FiguresAs } from '../../../core/ledger/units/look.ts'
import { choiceOption, wholeNumberOption } from '../arguments/options.ts'
import { COLUMNS_WITHOUT_TERMINAL, type Output } from '../output/output.ts'
import { reason } from '../words/cli-words.ts'

const FORMATS = ['text', 'json', 'csv', 'md'] as const
type Format = (typeof FORMATS)[number]

const HELP = `
Reads only: nothing in the folder changes, and a job that somebody has open can be read too.
A view that can't be calibrated leaves its dimensions without a value; the table is printed, and the exit code is 2.
With --format json, what stops it is printed as JSON as well: {"error": {"code", "parts", "words"}}.
Text is laid out to the width of the terminal; elsewhere to COLUMNS, or ${COLUMNS_WITHOUT_TERMINAL} columns.

Columns of csv:
  name, label, kind  the dimension; kind is length, area, angle or count
  count              how many of it one assembly has
  value, unit        a decimal number and its unit: in, mm, in2, mm2, deg, or nothing for a count
  written            what is shown, without its ±: a figure as the shop writes it (14 3/8"), anything else as a
                     decimal to the place where U ends (11.493")
  u, U, k, dof       standard uncertainty, expanded uncertainty U = k u at 95 %, coverage factor, effective
                     degrees of freedom (empty: more than 1,000)
  basis, status      what the value rests on (found: measured); agreed, single (unchecked), disputed or
                     open (no value)
  tolerance          as stated for the dimension
  why                where the value comes from, and how the rest agrees
  near               the nearest figure, as the job writes its own, within U of what is no figure
  from               "printed figures" for what was worked out from exact figures alone
  sum                "out" where it is part of a sum that does not add up, whatever its status
  low, high          what the value lies between at 95 % where it does so unevenly, and ± U alone would mislead
A row without a value has nothing in value, written, near, u, U, k, dof, low and high. Uncertainties have four significant
digits, and values end at the same place: two more than are worth showing, for working on with.
Records that begin with # come last: "# relation" has the relation in label, holds, does not hold or not checked
in status, and its misclosure in why; "# caution" has a caution in label.
Text that a spreadsheet would take for a formula, a number or a date (1/64) has an apostrophe before it.
The file is UTF-8 without a byte-order mark: where a spreadsheet asks, or shows odd signs, import it as UTF-8.

json has all of the table, as scantling schema table says; of what rows are uncertain by, also what they share
(sources, and by in each row), so that a sum or a ratio of rows can be given its right u.

Examples:
  $ scantling table ventilator
  $ scantling table ventilator --format csv > ventilator.csv
  $ scantling table ventilator --simulate hood_od
  $ scantling table ventilator --format json | jq '.rows[] | select(.status == "disputed") | .name'`

interface Options {
  format: Format
  figures: FiguresAs
  simulate?: string
  trials: number
  seed: number
}

const MOST = 10_000_000

async function written(table: Table, format: Format, width: number): Promise<string> {
  switch (format) {
    case 'text':
      return (await import('../layout/table-text.ts')).tableText(table, width)
    case 'json':
      return (await import('../../../core/handoff/table/table-json.ts')).tableJson(table)
    case 'csv':
      return (await import('../../../core/handoff/table/table-csv.ts')).tableCsv(table)
    case 'md':
      return (await import('../../../core/handoff/table/table-markdown.ts')).tableMarkdown(table)
  }
}

export function addTableCommand(program: Command, output: Output): void {
  program
    .command('table')
    .description('print the table of dimensions of a job')
    .argument('<FOLDER>', 'the job folder')
    .addOption(choiceOption('table', '--format <FORMAT>', 'how it is written', FORMATS))
    .addOption(choiceOption('table', '--figures <SET>', 'how exact inches are set', FIGURES_AS))
    .option('--simulate <NAME>', 'one dimension by Monte Carlo, beside its first-order uncertainty')
    .addOption(
      wholeNumberOption('table', '--trials <N>', 'how many trials', {
        least: 100,
        most: MOST,
        usual: 10_000,
      }),
    )
    .addOption(
      wholeNumberOption('table', '--seed <N>', 'where chance starts', { least: 0, most: MOST, usual: 1 }),
    )
    .addHelpText('after', HELP)
    .action(async (folder: string, options: Options) => {
      const { format, figures, simulate, trials, seed } = options
      if (simulate !== undefined) {
        if (format !== 'text' && format !== 'json') {
          output.fail(reason('usage.simulate-format'))
          return
        }
        const { simulated } = await import('../actions/simulate.ts')
        output.print(await simulated(folder, { simulate, trials, seed }, format === 'json'))
        return
      }
      const { readTable } = await import('../actions/read-table.ts')
      const { table, warning, scanProblem, viewProblem } = await readTable(folder, { figuresAs: figures })
      if (scanProblem !== undefined) {
        output.fail(scanProblem)
        return
      }
      output.print(await written(table, format, output.width))
      if (viewProblem !== undefined) output.fail(viewProblem)
      else if (warning !== undefined) output.note(warning)
    })
}
