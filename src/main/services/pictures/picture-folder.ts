import { access, constants, mkdir, readdir, realpath, rm, stat } from 'node:fs/promises'
import { join } from 'node:path'
import type { PyramidLevel } from '../../../contract/pictures.ts'
import { cacheFolder } from '../job-folder/layout.ts'
import { GROUND, HALF_MADE, OVERVIEW, THUMBNAIL, TILES } from './picture-names.ts'
import { tilesComplete } from './tiles-complete.ts'

const HALF_WRITTEN = /\.[0-9a-f]{16}\.tmp$/

const isFile = (path: string): Promise<boolean> =>
  stat(path).then(
    (entry) => entry.isFile() && entry.size > 0,
    () => false,
  )

export const hasOverview = (folder: string): Promise<boolean> => isFile(join(folder, OVERVIEW))

/** Whether the pictures that are made of the overview are there. */
export const hasFromOverview = async (folder: string): Promise<boolean> =>
  (await isFile(join(folder, THUMBNAIL))) && (await isFile(join(folder, GROUND)))

/** Whether every picture of a page is in the folder. */
export const hasAll = async (folder: string, levels: readonly PyramidLevel[]): Promise<boolean> =>
  (await hasOverview(folder)) &&
  (await hasFromOverview(folder)) &&
  (await tilesComplete(join(folder, TILES), levels))

/** What a process that died left half-made is removed. */
async function removeHalfMade(folder: string): Promise<void> {
  for (const name of await readdir(folder)) {
    if (HALF_MADE.test(name) || HALF_WRITTEN.test(name)) {
      await rm(join(folder, name), { recursive: true, force: true })
    }
  }
}

/**
 * The folder for a page's pictures: in the job's own `.cache` for whoever holds the job, so that they are there the
 * next time; for others, and where it can't be written, a temporary one, unless the job has them all already.
 * A `.cache` that leads out of the job is not used.
 * @param name of the folder below `.cache`
 * @param temporary makes a folder that is removed in the end
 */
export async function pictureFolder(
  job: string,
  name: string,
  writable: boolean,
  temporary: () => Promise<string>,
  levels: readonly PyramidLevel[],
): Promise<string> {
  const own = join(cacheFolder(job), name)
  try {
    if (writable) await mkdir(own, { recursive: true })
    const inside = join(await realpath(job), '.cache', name)
    if ((await realpath(own)) === inside) {
      if (writable) {
        await access(inside, constants.W_OK)
        await removeHalfMade(inside)
        return inside
      }
      if (await hasAll(inside, levels)) return inside
    }
  } catch {
    // Pictures can be made anew at any time, so that any other folder does as well.
  }
  const other = join(await temporary(), 'pictures', name)
  await mkdir(other, { recursive: true })
  return realpath(other)
}
