import type { Command } from 'commander'
import { loginName } from '../../services/people/login-name.ts'
import { textOption } from '../arguments/options.ts'
import { TAKE_OVER_HELP, takeOverOption } from '../arguments/take-over.ts'
import type { Output } from '../output/output.ts'

const HELP = `
Every mark belongs to the very file it was picked on. When that file has changed, nothing more is picked on its sheet
until the old file is put back or the sheet is linked anew. This command links it: to the file as it is now in the
job's scans folder, or to SCAN, which is copied there first.

All old picks are then taken to lie at the same pixels of the new picture. That is right for the same scan saved
again, with its record filled in or its tones corrected; it is wrong for a new scan of the paper, or one that was
cropped, turned or straightened, even where the size is the same: add a sheet for that and pick anew. A picture of
another width or height is refused. Look at the sheet's marks before you trust the table.
${TAKE_OVER_HELP}
Examples:
  $ scantling relink ventilator S1
  $ scantling relink ventilator S1 ~/scans/plan-toned.tif --by "A. Rivet"`

interface Options {
  by?: string
  passwordFile?: string
  takeOver?: string
}

export function addRelinkCommand(program: Command, output: Output): void {
  program
    .command('relink')
    .description('link a sheet to its scan as the file is now, or to another')
    .argument('<FOLDER>', 'the job folder')
    .argument('<SHEET>', 'what the sheet goes by: S1, or the number of one that came later')
    .argument('[SCAN]', "a scan to copy into the job (default: the sheet's own, as it is now)")
    .addOption(textOption('relink', '--by <PERSON>', 'who says so (default: the login name)', 'name'))
    .option('--password-file <FILE>', 'a file whose first line opens the scan, where it is locked')
    .addOption(takeOverOption('relink'))
    .addHelpText('after', HELP)
    .action(async (folder: string, sheet: string, scan: string | undefined, options: Options) => {
      const { relink } = await import('../actions/relink.ts')
      const how = { ...options, by: options.by ?? loginName() }
      const { notices, answer } = await relink(folder, sheet, scan, how)
      for (const notice of notices) output.note(notice)
      output.print(answer)
    })
}
