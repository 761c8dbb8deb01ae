import { userInfo } from 'node:os'
import type { Command } from 'commander'

const HELP = `
Reads edits, one JSON object a line, from FILE or standard input ("scantling schema edit" describes them), and
answers each with one line once it is on disk:
  ok 12: add mark M12
The first edit that is refused ends it: a sentence on standard error, exit code 2; the edits before it stay.

Examples:
  $ scantling edit ventilator edits.ndjson --by "A. Rivet"
  $ echo '{"do":"adopt","dimension":"barrel_length","adopt":"printed"}' | scantling edit ventilator`

const loginName = (): string => {
  try {
    return userInfo().username
  } catch {
    return 'somebody'
  }
}

export function addEditCommand(program: Command): void {
  program
    .command('edit')
    .description('make edits in a job, each acknowledged when it is on disk')
    .argument('<FOLDER>', 'the job folder')
    .argument('[FILE]', 'edits, one JSON object a line (default: standard input)')
    .option('--by <PERSON>', 'who makes the edits (default: the login name)')
    .addHelpText('after', HELP)
    .action(async (folder: string, file: string | undefined, options: { by?: string }) => {
      const { makeEdits } = await import('../make-edits.ts')
      await makeEdits(folder, file, options.by ?? loginName())
    })
}
