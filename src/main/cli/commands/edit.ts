import type { Command } from 'commander'
import { loginName } from '../../services/people/login-name.ts'
import { textOption } from '../arguments/options.ts'
import { TAKE_OVER_HELP, takeOverOption } from '../arguments/take-over.ts'
import type { Output } from '../output/output.ts'

const HELP = `
Reads edits, one JSON object a line, from FILE or standard input ("scantling schema edit" describes them), and
answers each with one line once it is on disk:
  ok 12: add mark M12
The first edit that is refused ends it: a sentence on standard error, exit code 2; the edits before it stay.

What is added without an "id" gets one that no other copy of the job gives, and a number; the answer has both:
  ok 13: add circle 13 (mark m-7k3f9q2xw5tzb)
An "id" that begins with new: ("new:a") stands for such an id, wherever it occurs in that edit:
  {"do":"several","name":"size of the rim","edits":[{"do":"add-mark","item":{"id":"new:rim", ...}},
   {"do":"add-reference","view":"V1","item":{"kind":"diameter","marks":["new:rim"],"size":"2 in"}}]}

What is there already is named by its id or as people call it, where that is one thing only:
  {"do":"withdraw-evidence","dimension":"spigot_length","id":"found 1","why":"bent since"}

Two more lines are taken: {"do":"undo"} takes back the newest edit, {"do":"redo"} makes again what was undone, as far
back as the history of the job reaches. What somebody else did is only taken back by {"do":"undo","theirs":true}.

Marks, evidence and notes that don't say who made them and when get both from --by and the clock. PERSON is the id or
the name of one of the job's people; somebody new is added to them first, and the answer says so.
${TAKE_OVER_HELP}
Examples:
  $ scantling edit ventilator edits.ndjson --by "A. Rivet"
  $ echo '{"do":"adopt","dimension":"drum_length","adopt":"printed"}' | scantling edit ventilator`

interface Options {
  by?: string
  takeOver?: string
}

export function addEditCommand(program: Command, output: Output): void {
  program
    .command('edit')
    .description('make edits in a job, each acknowledged when it is on disk')
    .argument('<FOLDER>', 'the job folder')
    .argument('[FILE]', 'edits, one JSON object a line (default: standard input)')
    .addOption(textOption('edit', '--by <PERSON>', 'who makes the edits (default: the login name)', 'name'))
    .addOption(takeOverOption('edit'))
    .addHelpText('after', HELP)
    .action(async (folder: string, file: string | undefined, options: Options) => {
      const { makeEdits } = await import('../actions/make-edits.ts')
      await makeEdits(output, folder, file, { by: options.by ?? loginName(), takeOver: options.takeOver })
    })
}
