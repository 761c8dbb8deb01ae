import { type Command, Option } from 'commander'
import type { Unit } from '../../../core/job/types.ts'
import { note, print } from '../output.ts'
import { notBlank } from '../text-option.ts'

const EXAMPLES = `
Each scan is copied into the job byte for byte and gets one sheet (its first page). PNG, JPEG, TIFF and WebP are read.

Examples:
  $ scantling new ventilator plan.tif
  $ scantling new ventilator plan.tif details.png --title "Deck ventilator" --unit in --by "A. Rivet"`

interface NewOptions {
  title?: string
  unit: Unit
  by?: string
}

export function addNewCommand(program: Command): void {
  program
    .command('new')
    .description('make a job folder from one scan or more')
    .argument('<FOLDER>', 'the job folder to make; it must be empty if it is there already')
    .argument('<SCAN...>', 'scan files')
    .option(
      '--title <TITLE>',
      "the job's title (default: the folder's name)",
      notBlank('Give a title, or leave it out.'),
    )
    .addOption(
      new Option('--unit <UNIT>', 'what a bare number in a figure means, and how the table is shown')
        .choices(['in', 'mm'])
        .default('in'),
    )
    .option('--by <PERSON>', 'who works on the job', notBlank('Give a name, or leave it out.'))
    .addHelpText('after', EXAMPLES)
    .action(async (folder: string, scans: string[], options: NewOptions) => {
      const { describeNewJob } = await import('../../services/job-folder/describe-new-job.ts')
      const { createJob } = await import('../../services/job-folder/create-job.ts')
      const { doubleRemarks, scanRemarks } = await import('../../services/scans/scan-remarks.ts')
      const remarks: string[] = []
      const job = await createJob(folder, scans, (added, doubles) => {
        remarks.push(...added.flatMap(scanRemarks), ...doubleRemarks(doubles))
        return describeNewJob(folder, added, options)
      })
      const sheets = job.sheets.map(({ id, scan }) => {
        const dpi = scan.dpi === undefined ? '' : `, ${scan.dpi} dpi`
        return `  ${id}  ${scan.file}  ${scan.width} × ${scan.height} px${dpi}\n`
      })
      print(`Made the job "${job.title}" in ${folder}\n${sheets.join('')}`)
      for (const remark of remarks) note(remark)
    })
}
