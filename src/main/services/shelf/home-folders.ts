import { readdir, realpath } from 'node:fs/promises'
import { dirname, join, relative, sep } from 'node:path'
import type { FoldersSeen } from '../../../contract/jobs.ts'
import { exists } from '../files/exists.ts'
import { isBelow } from '../files/is-below.ts'
import { systemCause } from '../files/system-reason.ts'
import { jobFile } from '../job-layout/job-layout.ts'
import { placeInWords } from '../known-jobs/place-in-words.ts'
import { ServiceError } from '../service-error.ts'
import { reason } from '../words/services-words.ts'

/** Common practice, no source: more than anybody reads through. */
const MOST = 1000

const NAMES = new Intl.Collator('en', { numeric: true, sensitivity: 'base' })

const isHidden = (name: string): boolean => name.startsWith('.')

/** What windows know folders by. */
export interface FolderIds {
  idOf(folder: string): string
  folderOf(id: string): string | undefined
}

/**
 * The folders below the home folder, to choose a job among. A window sees their names and which of them are jobs: no
 * files, nothing hidden, nothing outside, and it can ask for none that it was not shown.
 */
export class HomeFolders {
  readonly #ids: FolderIds
  readonly #home: string

  constructor(ids: FolderIds, home: string) {
    this.#ids = ids
    this.#home = home
  }

  /**
   * The folders in a folder.
   * @param id as it was told of; undefined: the home folder
   * @throws ServiceError when it was never told of, is outside, or can't be read
   */
  async look(id?: string): Promise<FoldersSeen> {
    const home = await this.#followed(this.#home)
    const wanted = id === undefined ? home : this.#ids.folderOf(id)
    if (wanted === undefined) throw new ServiceError(reason('folders.not-told'))
    // Followed at each look: what was a folder may be a link out of there by now.
    const folder = await this.#followed(wanted)
    this.#mustBeInSight(folder, home)
    const entries = await readdir(folder, { withFileTypes: true }).catch((error: unknown) => {
      throw new ServiceError(
        reason('folders.not-read', { place: placeInWords(folder, home), cause: systemCause(error) }),
      )
    })
    const names = entries
      .filter((entry) => entry.isDirectory() && !isHidden(entry.name))
      .map(({ name }) => name)
      .sort(NAMES.compare)
    const folders = await Promise.all(
      names.slice(0, MOST).map(async (name) => {
        const path = join(folder, name)
        return { id: this.#ids.idOf(path), name, isJob: await exists(jobFile(path)) }
      }),
    )
    const up = folder === home ? null : this.#ids.idOf(dirname(folder))
    return { place: placeInWords(folder, home), up, folders, more: names.length - folders.length }
  }

  #mustBeInSight(folder: string, home: string): void {
    const way = relative(home, folder)
    if (isBelow(folder, home) && !way.split(sep).some(isHidden)) return
    throw new ServiceError(reason('folders.outside'))
  }

  async #followed(folder: string): Promise<string> {
    try {
      return await realpath(folder)
    } catch (error) {
      throw new ServiceError(
        reason('folders.not-read', { place: placeInWords(folder, this.#home), cause: systemCause(error) }),
      )
    }
  }
}
