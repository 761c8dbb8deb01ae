import type { Command } from 'commander'
import type { Unit } from '../../../core/job/model/types.ts'
import type { PageChoice } from '../arguments/given-scans.ts'
import { aboveZeroOption, choiceOption, textOption } from '../arguments/options.ts'
import type { Output } from '../output/output.ts'

const EXAMPLES = `
Each scan is copied into the job byte for byte. PNG, JPEG, TIFF, WebP and PDF are read. Each page that is wanted gets a
sheet; without --pages or --all-pages that is the first. The options hold for all scans that are given. What a TIFF says
is a reduced copy of another page, or a mask, gets one only when --pages names it.

A page of a PDF that is a scan has the pixels of that scan. One that is drawn gets as many as --draw-at asks for.
A locked PDF is opened with the first line of the file that --password-file names; the job does not keep it.

How large a scan may be: "scantling limits".

Examples:
  $ scantling new ventilator plan.tif
  $ scantling new ventilator plan.tif details.png --title "Deck ventilator" --unit in --by "A. Rivet"
  $ scantling new ventilator drawings.pdf --pages 1-3,5 --draw-at 600
  $ scantling new ventilator photographed.jpg --dpi 300`

interface NewOptions extends PageChoice {
  title?: string
  unit: Unit
  by?: string
}

export function addNewCommand(program: Command, output: Output): void {
  program
    .command('new')
    .description('make a job folder from one scan or more')
    .argument('<FOLDER>', 'the job folder to make; it must be empty if it is there already')
    .argument('<SCAN...>', 'scan files')
    .addOption(textOption('new', '--title <TITLE>', "the job's title (default: the folder's name)", 'title'))
    .addOption(
      choiceOption(
        'new',
        '--unit <UNIT>',
        'what a bare number in a figure means, and how the table is shown',
        ['in', 'mm'],
      ),
    )
    .addOption(textOption('new', '--by <PERSON>', 'who works on the job', 'name'))
    .option('--pages <PAGES>', 'the pages that get a sheet, e.g. 1-3,5 (default: the first)')
    .option('--all-pages', 'every page gets a sheet')
    .addOption(
      aboveZeroOption(
        'new',
        '--dpi <NUMBER>',
        'pixels per inch, where the file is wrong or says nothing',
        'pixels-per-inch',
      ),
    )
    .addOption(
      aboveZeroOption(
        'new',
        '--draw-at <NUMBER>',
        'dots per inch for pages that are drawn (default: 400)',
        'dots-per-inch',
      ),
    )
    .option('--password-file <FILE>', 'a file whose first line opens locked scans')
    .addHelpText('after', EXAMPLES)
    .action(async (folder: string, scans: string[], options: NewOptions) => {
      const { describeNewJob } = await import('../../services/job-folder/describe-new-job.ts')
      const { createJob } = await import('../../services/job-folder/create-job.ts')
      const { doubleRemarks, scanRemarks } = await import('../../services/scans/intake/scan-remarks.ts')
      const { givenScans } = await import('../arguments/given-scans.ts')
      const { settingsLimits } = await import('../actions/settings-limits.ts')
      const kept = settingsLimits()
      const limits = await kept.read()
      if (kept.trouble !== undefined) output.note(kept.trouble)
      const remarks: string[] = []
      const describe: Parameters<typeof createJob>[2] = (added, doubles) => {
        remarks.push(...added.flatMap(scanRemarks), ...doubleRemarks(doubles))
        return describeNewJob(folder, added, { ...options, at: new Date().toISOString() })
      }
      const job = await createJob(folder, await givenScans(scans, options, limits), describe, limits)
      const sheets = job.sheets.map(({ id, scan }) => {
        const page = scan.page === 1 ? '' : `, page ${scan.page}`
        const dpi = scan.dpi === undefined ? '' : `, ${Number(scan.dpi.toPrecision(5))} dpi`
        return `  ${id}  ${scan.file}${page}  ${scan.width} × ${scan.height} px${dpi}\n`
      })
      output.print(`Made the job "${job.title}" in ${folder}\n${sheets.join('')}`)
      for (const remark of remarks) output.note(remark)
    })
}
