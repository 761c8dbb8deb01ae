import { type Command, InvalidArgumentError } from 'commander'
import { loginName } from '../../services/people/login-name.ts'
import { notBlank } from '../arguments/text-option.ts'

const HELP = `
Without an option: lists the notes of the job, one a line.

--export writes them as W3C Web Annotations (JSON-LD, one collection; "-" is standard output). Each is about the scan
by its SHA-256, its page, and a region as an SVG polygon in pixels of the page.
--import adds the notes of such a file. Each goes to the sheet of its scan and page; those on a picture that no sheet
is of are left out, or go to --sheet. What the job has already stays as it is.

Annotations that don't say who made them and when get both from --by and the clock.

Examples:
  $ scantling notes ventilator --export ventilator-notes.jsonld
  $ scantling notes ventilator-copy --import ventilator-notes.jsonld --by "A. Rivet"`

export interface NotesOptions {
  export?: string
  import?: string
  by?: string
  sheet?: string
}

export function addNotesCommand(program: Command): void {
  program
    .command('notes')
    .description('list the notes of a job, hand them on or bring some in as Web Annotations')
    .argument('<FOLDER>', 'the job folder')
    .option(
      '--export <FILE>',
      'write the notes to a new file; "-": to standard output',
      notBlank('Name a file.'),
    )
    .option('--import <FILE>', 'bring in the notes of a file', notBlank('Name a file.'))
    .option('--sheet <ID>', 'the sheet for notes on pictures that no sheet is of', notBlank('Name a sheet.'))
    .option(
      '--by <PERSON>',
      'who brings them in (default: the login name)',
      notBlank('Give a name, or leave it out.'),
    )
    .addHelpText('after', HELP)
    .action(async (folder: string, options: NotesOptions) => {
      if (options.export !== undefined && options.import !== undefined) {
        throw new InvalidArgumentError('error: --export and --import are two things: do one after the other.')
      }
      const { bringInNotes, handOnNotes, listNotes } = await import('../actions/carry-notes.ts')
      if (options.export !== undefined) await handOnNotes(folder, options.export)
      else if (options.import !== undefined) {
        await bringInNotes(folder, options.import, { by: options.by ?? loginName(), sheet: options.sheet })
      } else await listNotes(folder)
    })
}
