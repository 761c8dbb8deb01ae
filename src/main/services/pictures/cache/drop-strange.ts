import { lstat, readdir, realpath, rm } from 'node:fs/promises'
import { join } from 'node:path'
import type { Sheet } from '../../../../core/job/model/types.ts'
import { cacheFolder } from '../../job-layout/job-layout.ts'
import { PICTURE_FOLDER, pictureFolderName } from '../layout/picture-names.ts'

/**
 * Removes from a job's `.cache` the pictures that no sheet of it has, and those made another way. Only folders that are
 * named as such are, never what a link leads to. Whoever calls holds the job.
 */
export async function dropStrange(job: string, sheets: readonly Sheet[]): Promise<void> {
  const known = new Set(sheets.map(({ scan }) => pictureFolderName(scan)))
  const cache = cacheFolder(await realpath(job))
  if (!(await isFolder(cache))) return
  for (const name of await readdir(cache)) {
    const path = join(cache, name)
    if (PICTURE_FOLDER.test(name) && !known.has(name) && (await isFolder(path))) {
      await rm(path, { recursive: true, force: true })
    }
  }
}

const isFolder = (path: string): Promise<boolean> =>
  lstat(path).then(
    (entry) => entry.isDirectory(),
    () => false,
  )
