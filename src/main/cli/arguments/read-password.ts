import { readFile } from 'node:fs/promises'
import { systemReason } from '../../services/files/system-reason.ts'
import { ServiceError } from '../../services/service-error.ts'

/**
 * The first line of a file; never given as an argument, where others could see it.
 * @throws ServiceError when it can't be read or says nothing
 */
export async function readPassword(file: string): Promise<string> {
  let text: string
  try {
    text = await readFile(file, 'utf8')
  } catch (error) {
    throw new ServiceError(`The password in ${file} can't be read because ${systemReason(error)}.`)
  }
  const [line = ''] = text.replace(/^\uFEFF/, '').split(/\r?\n/)
  if (line !== '') return line
  throw new ServiceError(`"${file}" has no password on its first line: write it there.`)
}
