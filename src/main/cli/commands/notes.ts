import type { Command } from 'commander'
import { loginName } from '../../services/people/login-name.ts'
import { helpOf, textOption } from '../arguments/options.ts'
import { TAKE_OVER_HELP, takeOverOption } from '../arguments/take-over.ts'
import type { Output } from '../output/output.ts'
import { CliError } from '../words/cli-error.ts'
import { reason } from '../words/cli-words.ts'

const HELP = `
Without an option: lists the notes of the job, one a line.

--export writes them as W3C Web Annotations (JSON-LD, one collection; "-" is standard output). Each is about the scan
by its SHA-256, its page, and a region as an SVG polygon in pixels of the page.
--import adds the notes of such a file. Each goes to the sheet of its scan and page; those on a picture that no sheet
is of are not brought in, or go to --sheet. What the job has already stays as it is.

Annotations that don't say who made them and when get both from --by and the clock.
${TAKE_OVER_HELP}
Examples:
  $ scantling notes ventilator --export ventilator-notes.jsonld
  $ scantling notes ventilator-copy --import ventilator-notes.jsonld --by "A. Rivet"`

interface NotesOptions {
  export?: string
  import?: string
  by?: string
  sheet?: string
  takeOver?: string
}

export function addNotesCommand(program: Command, output: Output): void {
  program
    .command('notes')
    .description('list the notes of a job, hand them on or bring some in as Web Annotations')
    .argument('<FOLDER>', 'the job folder')
    .addOption(
      textOption(
        'notes',
        '--export <FILE>',
        'write the notes to a new file; "-": to standard output',
        'file',
      ),
    )
    .addOption(textOption('notes', '--import <FILE>', 'bring in the notes of a file', 'file'))
    .addOption(
      textOption(
        'notes',
        '--sheet <SHEET>',
        'the sheet (S1, or its number) for notes on pictures that no sheet is of',
        'sheet',
      ),
    )
    .addOption(textOption('notes', '--by <PERSON>', 'who brings them in (default: the login name)', 'name'))
    .addOption(takeOverOption('notes'))
    .addHelpText('after', HELP)
    .action(async (folder: string, options: NotesOptions) => {
      if (options.export !== undefined && options.import !== undefined) {
        throw new CliError(reason('usage.export-and-import', { help: helpOf('notes') }))
      }
      const { bringInNotes, handOnNotes, listNotes } = await import('../actions/carry-notes.ts')
      if (options.export !== undefined) await handOnNotes(output, folder, options.export)
      else if (options.import !== undefined) {
        await bringInNotes(output, folder, options.import, {
          by: options.by ?? loginName(),
          sheet: options.sheet,
          takeOver: options.takeOver,
        })
      } else await listNotes(output, folder)
    })
}
