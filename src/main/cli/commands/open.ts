import type { Command } from 'commander'
import type { Output } from '../output/output.ts'
import { CliError } from '../words/cli-error.ts'
import { reason } from '../words/cli-words.ts'

const HELP = `
Opens the workbench on a job; without FOLDER on its start page, where a scan can be brought in, or a job that was
open before be chosen. The command ends when the window is closed; what was done is saved by then.
Where a desktop window is open already, it shows the job instead, and the command ends at once.

The window is the desktop one where the Electron runtime is there, or can be downloaded (once, and only when its
place answers within two seconds). Otherwise it is an application window of an installed Chrome, Edge or Chromium.
Where there is neither, or no display, the address to open is printed. Which it is, and why, is said each time.

The address works on this machine only, and lets one browser in, once. Another address: end it and open again.

Only one may edit a job at a time: where somebody has it open, it is shown read-only, with who that is. Where nobody
can close it there, the window offers to take it over.

Environment:
  SCANTLING_WINDOW=none    as --print
  SCANTLING_NO_DOWNLOAD=1  don't download the Electron runtime; neither is it where CI is set
  SCANTLING_HOME=FOLDER    keep settings and new jobs there, not in the home folder

Examples:
  $ scantling open ventilator
  $ scantling open --sample
  $ scantling open ventilator --print`

interface Options {
  sample?: true
  print?: true
}

export function addOpenCommand(program: Command, output: Output): void {
  program
    .command('open')
    .description('open the workbench on a job, on the sample, or on its start page')
    .argument('[FOLDER]', 'the job folder (default: the start page)')
    .option('--sample', 'open a copy of the sample job, made to be practised on')
    .option('--print', 'open no window; print the address to open, and nothing else')
    .addHelpText('after', HELP)
    .action(async (folder: string | undefined, options: Options) => {
      if (folder !== undefined && options.sample === true) {
        throw new CliError(reason('usage.folder-and-sample'))
      }
      const { launch } = await import('../../launch/launch.ts')
      await launch({
        opens: folder !== undefined ? { folder } : options.sample === true ? 'sample' : 'start',
        addressOnly: options.print === true,
        say: (sentence) => output.say(sentence),
        giveAddress: (address) => output.print(`${address}\n`),
        log: (line) => output.note(line),
      })
    })
}
