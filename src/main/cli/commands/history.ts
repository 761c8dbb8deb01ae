import type { Command } from 'commander'
import { choiceOption, textOption } from '../arguments/options.ts'
import type { Output } from '../output/output.ts'

const HELP = `
Tells what was done in the job, by whom and when, and what was there before: the newest first, one line a change,
each with the number of its edit. What one edit did to several things stands in several lines. Times are those of this
machine's clock. Reads only, also while somebody has the job open.

--of takes the name of a dimension, or what it is; the name, label or id of a view, mark, sheet, person, instrument,
relation or note, also of one that is gone; what a mark marks; and a piece of evidence or a figured size with what it
belongs to: "drum_length found 1", "Elevation figured size 2". Names that something had before are found too: what was done
is told by the names of that time. A dimension is told with its evidence, its adoption and
the marks that its evidence is scaled from; a view with the sizes known in it; a person with all that they did. At the end,
without a number, stands what the job itself said when its history began.

With --format json each edit is one JSON object on a line of its own:
  n, at, by, who, name     its number (null: before the history began), when (ISO 8601), who as an id or a name, their
                           name, and what undo calls it
  undoes, redoes           the edit that it took back or made again: {"n", "name"}
  changes                  one for each thing: {"thing": {"kind", "id", "of"}, "called", "did", "fields", "words"};
                           did is added, changed, removed, adopted, withdrawn, reinstated, renamed, moved or
                           picked again; fields has {"field", "before", "after"}, as in job.json
A line with "began" instead of changes says with how much the history begins; "carried" is when the job was carried over
from the form that jobs had before.

Examples:
  $ scantling history ventilator | head
  $ scantling history ventilator --of hood_od
  $ scantling history ventilator --of Elevation
  $ scantling history ventilator --of "hood_od printed 1"
  $ scantling history ventilator --format json | jq 'select(.by == "AR") | .changes[].words'`

interface Options {
  of?: string
  format: 'text' | 'json'
}

export function addHistoryCommand(program: Command, output: Output): void {
  program
    .command('history')
    .description('tell what was done in a job, by whom and when, and what was there before')
    .argument('<FOLDER>', 'the job folder')
    .addOption(
      textOption('history', '--of <NAME>', 'of one dimension, view, mark, sheet or person only', 'name'),
    )
    .addOption(choiceOption('history', '--format <FORMAT>', 'how it is written', ['text', 'json']))
    .addHelpText('after', HELP)
    .action(async (folder: string, { of, format }: Options) => {
      const { tellHistory } = await import('../actions/tell-history.ts')
      await tellHistory(output, folder, { of, json: format === 'json' })
    })
}
