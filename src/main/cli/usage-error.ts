import type { Command, CommanderError } from 'commander'
import { oneClause } from './output/one-sentence.ts'

const ARGUMENT = /^error: command-argument value '(.*?)' is invalid for argument '(\w+)'\. ?(.*)$/s
const OPTION = /^error: option '(?:-\w, )?(--[\w-]+).*?' argument '(.*?)' is invalid\. ?(.*)$/s

function inWords(message: string): string {
  const argument = ARGUMENT.exec(message)
  if (argument !== null) return `"${argument[1]}" is no ${argument[2]?.toLowerCase()}. ${argument[3]}`
  const option = OPTION.exec(message)
  if (option === null) return message
  const [, name, value, advice] = option
  return value?.trim() === ''
    ? `The value of ${name} is empty. ${advice}`
    : `${name} can't be "${value}". ${advice}`
}

/** What is wrong with a command line, and whose help shows how it is used. */
export function usageError(error: CommanderError, program: Command, args: readonly string[]): string {
  const command = program.commands.find((one) => one.name() === args[0])
  const help = command === undefined ? 'scantling --help' : `scantling ${command.name()} --help`
  return `${oneClause(inWords(error.message))}; "${help}" shows how it is used`
}
