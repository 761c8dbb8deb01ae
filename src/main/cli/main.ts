import { CommanderError } from 'commander'
import { ScantlingError } from '../../core/words/scantling-error.ts'
import { Output, type Streams } from './output/output.ts'
import { scantlingProgram } from './program.ts'
import { usageError } from './usage-error.ts'
import { reason } from './words/cli-words.ts'

const wantsJson = (args: readonly string[]): boolean =>
  args.some((arg, i) => arg === '--format=json' || (arg === '--format' && args[i + 1] === 'json'))

/**
 * Runs one command line to its end.
 * @param args what follows the program's name
 * @returns the exit code; what went wrong is said on standard error, never thrown
 */
export async function main(args: readonly string[], streams: Streams): Promise<number> {
  const output = new Output(streams, wantsJson(args))
  const program = scantlingProgram(output)
  try {
    await program.parseAsync(args, { from: 'user' })
  } catch (error) {
    if (error instanceof CommanderError) {
      // Without a command there is nothing wrong: show what there is.
      if (error.code === 'commander.help') program.outputHelp()
      else if (error.exitCode !== 0) output.fail(usageError(error, program, args))
    } else if (error instanceof ScantlingError) {
      output.fail(error.reason)
    } else {
      output.fail(reason('cli.fault', { message: error instanceof Error ? error.message : String(error) }))
      if (process.env['SCANTLING_DEBUG'] !== undefined && error instanceof Error)
        streams.stderr.write(`${error.stack}\n`)
    }
  }
  return output.code
}
