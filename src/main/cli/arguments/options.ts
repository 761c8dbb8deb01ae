import { Option } from 'commander'
import { CliError } from '../words/cli-error.ts'
import { reason, type Wanted } from '../words/cli-words.ts'

/** Where the help of a command is, or of the program itself. */
export const helpOf = (command: string | undefined): string =>
  command === undefined ? 'scantling --help' : `scantling ${command} --help`

/**
 * An option of a command whose value is read from text.
 * @param read undefined: the text does not do
 */
export function valueOption<T>(
  command: string,
  [flags, description]: readonly [flags: string, description: string],
  wants: Wanted,
  read: (text: string, before: T | undefined) => T | undefined,
): Option {
  const option = new Option(flags, description)
  return option.argParser((text: string, before: T | undefined) => {
    const value = read(text, before)
    if (value !== undefined) return value
    const given = { option: option.long ?? flags, value: text, help: helpOf(command) }
    throw new CliError(reason('usage.unsuitable-value', { ...given, wants }))
  })
}

/** One that must say something. */
export const textOption = (command: string, flags: string, description: string, wants: Wanted): Option =>
  valueOption(command, [flags, description], wants, (text) => text.trim() || undefined)

/** One that takes a number above 0. */
export const aboveZeroOption = (command: string, flags: string, description: string, wants: Wanted): Option =>
  valueOption(command, [flags, description], wants, (text) => {
    const value = Number(text)
    return text.trim() !== '' && Number.isFinite(value) && value > 0 ? value : undefined
  })

const DIGITS = /^\d+$/

/** One that takes a whole number. */
export function wholeNumberOption(
  command: string,
  flags: string,
  description: string,
  { least, most, usual }: { least: number; most: number; usual: number },
): Option {
  const option = new Option(flags, description).default(usual)
  return option.argParser((text: string) => {
    const value = Number(text)
    if (DIGITS.test(text) && value >= least && value <= most) return value
    const given = { option: option.long ?? flags, value: text, help: helpOf(command) }
    throw new CliError(reason('usage.no-whole-number', { ...given, least, most }))
  })
}

/** One that takes one of a few words. */
export function choiceOption(
  command: string,
  flags: string,
  description: string,
  choices: readonly string[],
): Option {
  const option = new Option(flags, description).choices(choices).default(choices[0])
  return option.argParser((value: string) => {
    if (choices.includes(value)) return value
    const given = { option: option.long ?? flags, value, help: helpOf(command) }
    throw new CliError(reason('usage.no-such-choice', { ...given, choices }))
  })
}
