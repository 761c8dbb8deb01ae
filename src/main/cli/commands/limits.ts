import { type Command, Option } from 'commander'
import type { Limits } from '../../services/limits/kept-limits.ts'
import { valueOption } from '../arguments/options.ts'
import type { Output } from '../output/output.ts'

const HELP = `
Limits, as whole numbers:
  pixels   of a page
  pages    of a scan file that are looked at
  bytes    of a scan file
  memory   bytes that the process that reads a scan may use
  seconds  that looking into a scan, or at one of its pages, may take

They hold for this person, in the window as well, where they stand under "Size limits", at the Sheet station.

With --format json, what stops it is printed as JSON as well: {"error": {"code", "parts", "words"}}.

Examples:
  $ scantling limits
  $ scantling limits --set pixels=2000000000 --set seconds=600
  $ scantling limits --defaults`

type Settings = Record<string, number>

interface Options {
  set?: Settings
  defaults?: true
  /** What `defaults` was called before. */
  usual?: true
  format: string
}

function withSetting(text: string, before: Settings = {}): Settings | undefined {
  const [, name, value] = /^([a-z]+)=(\d+)$/.exec(text.trim()) ?? []
  return name === undefined ? undefined : { ...before, [name]: Number(value) }
}

export function addLimitsCommand(program: Command, output: Output): void {
  program
    .command('limits')
    .description('show or set how much is taken in')
    .addOption(
      valueOption(
        'limits',
        ['--set <NAME=NUMBER>', 'set one limit; may be given again for others'],
        'limit',
        withSetting,
      ),
    )
    .option('--defaults', 'set all limits to their defaults first')
    .addOption(new Option('--usual').hideHelp())
    .option('--format <FORMAT>', 'how to print them: text or json', 'text')
    .addHelpText('after', HELP)
    .action(async ({ set, defaults, usual, format }: Options) => {
      const { LIMITS } = await import('../../services/limits/kept-limits.ts')
      const { limitInWords } = await import('../../services/words/limits-in-words.ts')
      const { settingsLimits } = await import('../actions/settings-limits.ts')
      const kept = settingsLimits()
      const afresh = defaults === true || usual === true
      let limits = await kept.read()
      if (set === undefined && !afresh) {
        if (kept.trouble !== undefined) output.note(kept.trouble)
      } else {
        limits = await kept.set({ ...(afresh ? LIMITS : limits), ...set })
      }
      if (format === 'json') {
        output.print(`${JSON.stringify(limits, null, 2)}\n`)
        return
      }
      for (const [name, value] of Object.entries(limits)) {
        output.print(`${name.padEnd(8)} ${limitInWords(name as keyof Limits, value)}\n`)
      }
    })
}
