import { existsSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { ServiceError } from '../services/service-error.ts'
import { reason } from '../services/words/services-words.ts'

/**
 * The folder that holds what ships: the built window, the sample. The same from the source as from the build.
 * @throws ServiceError when part of the program is gone
 */
export function projectFolder(from: string = import.meta.dirname): string {
  for (let folder = from; ; folder = dirname(folder)) {
    if (existsSync(join(folder, 'package.json')) && existsSync(join(folder, 'samples'))) return folder
    if (folder === dirname(folder)) {
      throw new ServiceError(reason('program.incomplete'))
    }
  }
}
