import type { Command, CommanderError } from 'commander'
import { nearestWord } from '../../core/job/text/edit-distance.ts'
import { helpOf } from './arguments/options.ts'
import { type CliReason, reason } from './words/cli-words.ts'

/** As many slips as leave more than four tenths of a word right, and no more than three. */
const slips = (word: string): number => Math.min(3, Math.ceil(word.length * 0.6) - 1)

const isOption = (arg: string): boolean => arg.length > 1 && arg.startsWith('-')

const bare = (option: string): string => option.slice('--'.length)

function nearestOption(given: string, command: Command): string | null {
  if (!given.startsWith('--')) return null
  const known = command
    .createHelp()
    .visibleOptions(command)
    .flatMap(({ long }) => long ?? [])
  const nearest = nearestWord(bare(given), known.map(bare), slips)
  return nearest === undefined ? null : `--${nearest}`
}

/**
 * What is wrong with a command line, and whose help shows how it is used.
 * @param program after it has refused `args`
 */
export function usageError(error: CommanderError, program: Command, args: readonly string[]): CliReason {
  const named = program.commands.find((one) => one.name() === program.args[0])
  const command = named ?? program
  const help = helpOf(named?.name())
  switch (error.code) {
    case 'commander.unknownCommand': {
      const [given = ''] = program.args
      const known = program.commands.map((one) => one.name())
      return reason('usage.unknown-command', {
        command: given,
        meant: nearestWord(given, known, slips) ?? null,
        help,
      })
    }
    case 'commander.unknownOption': {
      const option = command.args.find(isOption) ?? ''
      return reason('usage.unknown-option', { option, meant: nearestOption(option, command), help })
    }
    case 'commander.missingArgument': {
      const missing = command.registeredArguments.find(
        ({ required }, i) => required && command.args[i] === undefined,
      )
      return reason('usage.missing-argument', { argument: missing?.name() ?? '', help })
    }
    case 'commander.optionMissingArgument': {
      const last = args.at(-1)
      const option = command.options.find(({ short, long }) => last === short || last === long)
      return reason('usage.option-without-value', { option: option?.flags ?? '', help })
    }
    case 'commander.excessArguments':
      return reason('usage.too-many-arguments', {
        command: command.name(),
        most: command.registeredArguments.length,
        given: command.args.length,
        help,
      })
    default:
      return reason('usage.other', { says: error.message, help })
  }
}
