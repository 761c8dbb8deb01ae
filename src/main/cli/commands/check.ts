import type { Command } from 'commander'
import { labelOfId } from '../../../core/job/ids/label.ts'
import { nameIn } from '../../../core/words/name-in.ts'
import type { SheetScan } from '../../services/scans/kept/verify-scans.ts'
import type { Output } from '../output/output.ts'
import { type CliReason, inWords, reason } from '../words/cli-words.ts'

const HELP = `
Lists what is disputed, relations that do not hold or could not be checked, views whose scale may be wrong with the
figured sizes that are set aside, printed figures to settle (hard or impossible to read, or asked about), dimensions
without a value, and scans that are no longer the files picked on. Reads only.

Exit codes:
  0  nothing is disputed, and all relations that could be checked hold; dimensions may still have no value, or be
     unchecked or estimated, and relations not checked: read the list
  1  something is disputed or does not hold
  2  a scan is missing or changed, a view can't be calibrated, or there is no job to read

Example:
  $ scantling check ventilator && scantling table ventilator --format csv > ventilator.csv`

/** Short, because the whole of it is in the list. */
function scanStop(scans: readonly SheetScan[]): CliReason | undefined {
  const [first, ...others] = scans.flatMap(({ sheet, file, state, problem }) =>
    state === 'ok' ? [] : [{ part: { sheet, file, state }, names: problem.names ?? {} }],
  )
  if (first === undefined) return undefined
  const { part, names } = first
  const stop = reason('cli.scan-in-list', { ...part, more: others.length })
  return nameIn(stop, (id) => names[id] ?? labelOfId(id))
}

export function addCheckCommand(program: Command, output: Output): void {
  program
    .command('check')
    .description('list what is disputed, does not hold, is set aside, hard to read or without a value')
    .argument('<FOLDER>', 'the job folder')
    .addHelpText('after', HELP)
    .action(async (folder: string) => {
      const { tableFindings } = await import('../actions/table-findings.ts')
      const { readTable } = await import('../actions/read-table.ts')
      const { table, scans, warning, viewProblem } = await readTable(folder)
      const findings = tableFindings(table)
      const sections: [string, string[]][] = [
        ['Disputed', findings.disputed],
        ['Does not hold', findings.unheld],
        ['Scales to settle', findings.scales],
        ['Figures to settle', findings.figures],
        ['No value', findings.open],
        ['Not checked', findings.unchecked],
        ['Scans', scans.flatMap(({ problem }) => (problem === null ? [] : [inWords(problem)]))],
      ]
      const found = sections.filter(([, sentences]) => sentences.length > 0)
      const text = found.map(
        ([heading, lines]) => `${heading}\n${lines.map((line) => `  ${line}\n`).join('')}`,
      )
      const { length } = table.rows
      output.print(
        text.length > 0
          ? text.join('\n')
          : `Nothing to settle in ${length} dimension${length === 1 ? '' : 's'}.\n`,
      )
      const stop = scanStop(scans) ?? viewProblem
      if (stop !== undefined) {
        output.fail(stop)
        return
      }
      if (warning !== undefined) output.note(warning)
      if (findings.disputed.length > 0 || findings.unheld.length > 0) output.code = 1
    })
}
