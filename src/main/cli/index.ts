import { CommanderError } from 'commander'
import { ScantlingError } from '../../core/words/scantling-error.ts'
import { oneClause } from './output/one-sentence.ts'
import { fail, ignoreClosedPipes } from './output/output.ts'
import { scantlingProgram } from './program.ts'
import { usageError } from './usage-error.ts'

ignoreClosedPipes()
const program = scantlingProgram()
try {
  await program.parseAsync()
} catch (error) {
  if (error instanceof CommanderError) {
    // Without a command there is nothing wrong: show what there is.
    if (error.code === 'commander.help') program.outputHelp()
    else if (error.exitCode !== 0) fail(usageError(error, program, process.argv.slice(2)))
  } else if (error instanceof ScantlingError) {
    fail(error.message)
  } else {
    const what = error instanceof Error ? error.message : String(error)
    fail(`Scantling failed by a fault of its own (${oneClause(what)}); nothing more was done`)
    if (process.env['SCANTLING_DEBUG'] !== undefined) console.error(error)
  }
}
