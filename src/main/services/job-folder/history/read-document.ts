import { readFile } from 'node:fs/promises'
import { parseJobText } from '../../../../core/job/parse-job-text.ts'
import { ScantlingError } from '../../../../core/words/scantling-error.ts'
import { systemCause } from '../../files/system-reason.ts'
import { ServiceError } from '../../service-error.ts'
import { reason } from '../../words/services-words.ts'
import type { ReadDocument } from './read-history.ts'

/** The job document, checked. @throws ServiceError that names the file and what is wrong with it */
export async function readDocument(path: string): Promise<ReadDocument> {
  let bytes: Buffer
  let text: string
  try {
    bytes = await readFile(path)
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch (error) {
    if (error instanceof TypeError) throw new ServiceError(reason('job-file.not-utf8', { path }))
    throw new ServiceError(reason('job-file.not-read', { path, cause: systemCause(error) }))
  }
  if (text.trim() === '') {
    throw new ServiceError(reason('job-file.empty', { path }))
  }
  try {
    return { bytes, job: parseJobText(text) }
  } catch (error) {
    if (error instanceof ScantlingError)
      throw new ServiceError(reason('job-file.unsound', { path, problem: error.reason }))
    throw error
  }
}
