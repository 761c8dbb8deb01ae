import type { Command } from 'commander'
import { loginName } from '../../services/people/login-name.ts'
import { textOption } from '../arguments/options.ts'
import { TAKE_OVER_HELP, takeOverOption } from '../arguments/take-over.ts'
import type { Output } from '../output/output.ts'

const HELP = `
Every mark belongs to the very file it was picked on. When that file has changed, nothing more is picked on its sheet
until the old file is put back or the new one is accepted. This command accepts it for the sheet: the file as it is now
in the job's scans folder, or SCAN, which is copied there first.

All old picks are then taken to lie at the same pixels of the new picture. That is right for the same scan saved
again, with its record filled in or its tones corrected; it is wrong for a new scan of the paper, or one that was
cropped, turned or squared up, even where the size is the same: add a sheet for that and pick anew. A picture of
another width or height is refused. Look at the sheet's marks before you trust the table.
${TAKE_OVER_HELP}
Examples:
  $ scantling accept-scan ventilator S1
  $ scantling accept-scan ventilator S1 ~/scans/plan-toned.tif --by "A. Rivet"`

const NAME = 'accept-scan'

interface Options {
  by?: string
  passwordFile?: string
  takeOver?: string
}

/** The command, and what it was called before, which the help does not list. */
export function addAcceptScanCommands(program: Command, output: Output): void {
  addCommand(program.command(NAME), output)
  addCommand(program.command('relink', { hidden: true }), output)
}

function addCommand(command: Command, output: Output): void {
  command
    .description('accept a scan for a sheet: its file as it is now, or another')
    .argument('<FOLDER>', 'the job folder')
    .argument('<SHEET>', 'what the sheet goes by: S1, or the number of one that came later')
    .argument('[SCAN]', "a scan to copy into the job (default: the sheet's own, as it is now)")
    .addOption(textOption(NAME, '--by <PERSON>', 'who says so (default: the login name)', 'name'))
    .option('--password-file <FILE>', 'a file whose first line opens the scan, where it is locked')
    .addOption(takeOverOption(NAME))
    .addHelpText('after', HELP)
    .action(async (folder: string, sheet: string, scan: string | undefined, options: Options) => {
      const { acceptScan } = await import('../actions/accept-scan.ts')
      const how = { ...options, by: options.by ?? loginName() }
      const { notices, answer } = await acceptScan(folder, sheet, scan, how)
      for (const notice of notices) output.note(notice)
      output.print(answer)
    })
}
