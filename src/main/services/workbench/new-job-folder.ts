import { mkdir, rmdir } from 'node:fs/promises'
import { join } from 'node:path'
import { safeName } from '../files/safe-name.ts'
import { systemCause, systemCode } from '../files/system-reason.ts'
import { ServiceError } from '../service-error.ts'
import { reason } from '../words/services-words.ts'

const MOST_ALIKE = 1000

/**
 * Makes an empty folder for a job on the shelf, named after its title, numbered when that name is taken.
 * @throws ServiceError when none can be made
 */
export async function newJobFolder(shelf: string, title: string): Promise<string> {
  const name = safeName(title, 'Job')
  try {
    await mkdir(shelf, { recursive: true })
    for (let number = 1; number <= MOST_ALIKE; number++) {
      const folder = join(shelf, number === 1 ? name : `${name} ${number}`)
      try {
        // Making it is what claims the name: of two that try at once only one succeeds.
        await mkdir(folder)
        return folder
      } catch (error) {
        if (systemCode(error) !== 'EEXIST') throw error
      }
    }
  } catch (error) {
    throw new ServiceError(reason('shelf.no-folder', { shelf, cause: systemCause(error) }))
  }
  throw new ServiceError(reason('shelf.too-many-alike', { most: MOST_ALIKE, name, shelf }))
}

/** Gives the name back, when no job was made of it. */
export const dropJobFolder = (folder: string): Promise<void> => rmdir(folder).catch(() => undefined)
