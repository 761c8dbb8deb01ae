import { Command } from 'commander'
import { version } from '../../../package.json'
import { addAcceptScanCommands } from './commands/accept-scan.ts'
import { addCheckCommand } from './commands/check.ts'
import { addEditCommand } from './commands/edit.ts'
import { addHistoryCommand } from './commands/history.ts'
import { addLimitsCommand } from './commands/limits.ts'
import { addMendCommand } from './commands/mend.ts'
import { addNewCommand } from './commands/new.ts'
import { addNotesCommand } from './commands/notes.ts'
import { addOpenCommand } from './commands/open.ts'
import { addReadCommand } from './commands/read.ts'
import { addSchemaCommand } from './commands/schema.ts'
import { addTableCommand } from './commands/table.ts'
import type { Output } from './output/output.ts'

const MORE = `
A job is a folder: job.json, the scans as received, and history.ndjson, which keeps every edit ever made.

In the workbench's window:
  $ scantling open ventilator

From a scan to a table on the command line:
  $ scantling new ventilator plan.tif --title "Deck ventilator" --unit in --by "A. Rivet"
  $ scantling edit ventilator edits.ndjson
  $ scantling table ventilator
  $ scantling check ventilator

Exit codes:
  0  done
  1  check found something disputed, or a relation that does not hold
  2  it could not be done; one sentence on standard error says what, where and what to do

Values scaled from a print are estimates. "scantling COMMAND --help" tells more of each command.`

/** Columns of help where there is no terminal. */
const HELP_COLUMNS = 80

/** The command line: every command, with its help. Errors are thrown as CommanderError and printed by the caller. */
export function scantlingProgram(output: Output): Command {
  const program = new Command('scantling')
    .description(
      'Turns a scanned engineering drawing into a table of named dimensions with stated uncertainty.',
    )
    .version(version, '-V, --version', 'print the version')
    .helpOption('-h, --help', 'print this help')
    .helpCommand(false)
    .addHelpText('after', MORE)
    .exitOverride()
    .configureOutput({
      writeOut: (text) => output.print(text),
      writeErr: () => undefined,
      getOutHelpWidth: () => output.terminalWidth ?? HELP_COLUMNS,
    })
    .showSuggestionAfterError(true)
  addNewCommand(program, output)
  addEditCommand(program, output)
  addAcceptScanCommands(program, output)
  addOpenCommand(program, output)
  addTableCommand(program, output)
  addCheckCommand(program, output)
  addNotesCommand(program, output)
  addHistoryCommand(program, output)
  addReadCommand(program, output)
  addMendCommand(program, output)
  addLimitsCommand(program, output)
  addSchemaCommand(program, output)
  return program
}
