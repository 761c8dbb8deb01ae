import { randomBytes } from 'node:crypto'
import { copyFile, cp, mkdir, rename, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { exists } from '../files/exists.ts'
import { systemCause } from '../files/system-reason.ts'
import { historyFile, jobFile, scansFolder } from '../job-layout/job-layout.ts'
import { ServiceError } from '../service-error.ts'
import { reason } from '../words/services-words.ts'

/** Where the copy of the sample job is that a person practises on. */
export const sampleCopyFolder = (shelf: string): string => join(shelf, 'Deck ventilator (sample)')

/**
 * The copy of the sample job on the shelf, made the first time: the document, its history and its scans. It appears whole or not
 * at all.
 * @param sample the job folder that ships
 * @throws ServiceError when it can't be copied
 */
export async function sampleCopy(sample: string, shelf: string): Promise<string> {
  const folder = sampleCopyFolder(shelf)
  if (await exists(folder)) return folder
  const temporary = `${folder}.${randomBytes(8).toString('hex')}.tmp`
  try {
    await mkdir(temporary, { recursive: true })
    await cp(scansFolder(sample), scansFolder(temporary), { recursive: true })
    await copyFile(jobFile(sample), jobFile(temporary))
    const history = historyFile(sample)
    if (await exists(history)) await copyFile(history, historyFile(temporary))
    await rename(temporary, folder)
  } catch (error) {
    await rm(temporary, { recursive: true, force: true }).catch(() => undefined)
    // Another process may have made it meanwhile.
    if (await exists(folder)) return folder
    throw new ServiceError(reason('sample.not-copied', { folder, cause: systemCause(error) }))
  }
  return folder
}
