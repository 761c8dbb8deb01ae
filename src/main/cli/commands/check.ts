import type { Command } from 'commander'
import { fail, note, print } from '../output.ts'

const HELP = `
Lists what is disputed, open or suspect, relations that do not close, and scans that are no longer the files
picked on. Reads only. Exit code 1 when anything is disputed or does not close, 0 otherwise; 2 when a scan is
missing or changed, or a view can't be calibrated.

Example:
  $ scantling check ventilator && scantling table ventilator --format csv > for-the-shop.csv`

export function addCheckCommand(program: Command): void {
  program
    .command('check')
    .description('say what must be settled before the table goes to the shop')
    .argument('<FOLDER>', 'the job folder')
    .addHelpText('after', HELP)
    .action(async (folder: string) => {
      const { tableFindings } = await import('../../../core/handoff/table-findings.ts')
      const { readTable } = await import('../read-table.ts')
      const { table, scans, warning, scanProblem, viewProblem } = await readTable(folder)
      const findings = tableFindings(table)
      const sections: [string, string[]][] = [
        ['Disputed', findings.disputed],
        ['Does not close', findings.unclosed],
        ['Suspect', findings.suspect],
        ['Open', findings.open],
        ['Scans', scans.flatMap(({ sentence }) => (sentence === '' ? [] : [sentence]))],
      ]
      const found = sections.filter(([, sentences]) => sentences.length > 0)
      const text = found.map(
        ([heading, lines]) => `${heading}\n${lines.map((line) => `  ${line}\n`).join('')}`,
      )
      const { length } = table.rows
      print(
        text.length > 0
          ? text.join('\n')
          : `Nothing to settle in ${length} dimension${length === 1 ? '' : 's'}.\n`,
      )
      const stop = scanProblem ?? viewProblem
      if (stop !== undefined) {
        fail(stop)
        return
      }
      if (warning !== undefined) note(warning)
      if (findings.disputed.length > 0 || findings.unclosed.length > 0) process.exitCode = 1
    })
}
