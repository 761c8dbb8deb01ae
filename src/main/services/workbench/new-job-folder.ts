import { mkdir, rmdir } from 'node:fs/promises'
import { join } from 'node:path'
import { safeName } from '../files/safe-name.ts'
import { systemCause, systemCode } from '../files/system-reason.ts'
import { placeInWords } from '../known-jobs/place-in-words.ts'
import { ServiceError } from '../service-error.ts'
import { reason } from '../words/services-words.ts'

/**
 * Makes an empty folder for a job on the shelf, named after its title.
 * @throws ServiceError when that name is taken, or none can be made
 */
export async function newJobFolder(shelf: string, title: string): Promise<string> {
  const name = safeName(title, 'Job')
  const folder = join(shelf, name)
  try {
    await mkdir(shelf, { recursive: true })
    // Making it is what claims the name: of two that try at once only one succeeds.
    await mkdir(folder)
    return folder
  } catch (error) {
    if (systemCode(error) === 'EEXIST')
      throw new ServiceError(reason('shelf.name-taken', { name, shelf: placeInWords(shelf) }))
    throw new ServiceError(reason('shelf.no-folder', { shelf, cause: systemCause(error) }))
  }
}

/** Gives the name back, when no job was made of it. */
export const dropJobFolder = (folder: string): Promise<void> => rmdir(folder).catch(() => undefined)
