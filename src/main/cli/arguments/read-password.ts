import { readFile } from 'node:fs/promises'
import { systemCause } from '../../services/files/system-reason.ts'
import { CliError } from '../words/cli-error.ts'
import { reason } from '../words/cli-words.ts'

/**
 * The first line of a file; never given as an argument, where others could see it.
 * @throws CliError when it can't be read or says nothing
 */
export async function readPassword(file: string): Promise<string> {
  let text: string
  try {
    text = await readFile(file, 'utf8')
  } catch (error) {
    throw new CliError(reason('cli.password-unreadable', { file, why: systemCause(error) }))
  }
  const [line = ''] = text.replace(/^\uFEFF/, '').split(/\r?\n/)
  if (line !== '') return line
  throw new CliError(reason('cli.password-missing', { file }))
}
