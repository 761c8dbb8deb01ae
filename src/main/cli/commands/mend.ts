import type { Command } from 'commander'
import { loginName } from '../../services/people/login-name.ts'
import { textOption } from '../arguments/options.ts'
import { TAKE_OVER_HELP, takeOverOption } from '../arguments/take-over.ts'
import type { Output } from '../output/output.ts'

const HELP = `
A job is job.json and history.ndjson, which belong together: the first says at which line of the second it was
written. Where they no longer do (one was put back from a backup, changed by hand, cut short, or is another copy's),
the job is not opened and nothing is changed. This command says what is wrong and what each of the two holds, and
with --from lets the job go on from one of them:

  --from job       job.json as it is now. It becomes an edit of its own; what was done before it can't be undone.
  --from history   every edit that is whole and goes on from the one before it; job.json is made anew.
  --from rescued   what was kept in a folder "rescued-..." when others changed the job's files while it was open:
                   its history and its job.json. Where there are several such folders, the name of the one.

Both files as they were are kept first, in the folder "set-aside" of the job; what was rescued stays where it is.
${TAKE_OVER_HELP}
Examples:
  $ scantling mend ventilator
  $ scantling mend ventilator --from history`

interface Options {
  from?: string
  by?: string
  takeOver?: string
}

export function addMendCommand(program: Command, output: Output): void {
  program
    .command('mend')
    .description('say what is wrong with the files of a job, and let it go on from one of them')
    .argument('<FOLDER>', 'the job folder')
    .addOption(textOption('mend', '--from <FILE>', 'what to go on from: job, history or rescued', 'file'))
    .addOption(textOption('mend', '--by <PERSON>', 'who decides it (default: the login name)', 'name'))
    .addOption(takeOverOption('mend'))
    .addHelpText('after', HELP)
    .action(async (folder: string, { from, by = loginName(), takeOver }: Options) => {
      const { mend, sayWhatIsWrong } = await import('../actions/mend.ts')
      if (from === undefined) output.print(await sayWhatIsWrong(folder))
      else await mend(output, folder, from, { by, takeOver })
    })
}
