import { access, constants, mkdir, realpath } from 'node:fs/promises'
import { join } from 'node:path'
import { cacheFolder } from '../../job-layout/job-layout.ts'
import { pictureFolderName } from '../layout/picture-names.ts'
import { removeHalfMade } from './half-made.ts'
import { type Described, type Manifest, readManifest } from './manifest.ts'

export interface PictureFolder {
  path: string
  /** Of the pictures that are there and can be used; null while they are not. */
  manifest: Manifest | null
}

/**
 * The folder for a page's pictures: in the job's own `.cache` for whoever holds the job, so that they are there the
 * next time; for others, and where it can't be written, a temporary one, unless the job has them all already.
 * A `.cache` that leads out of the job is not used.
 * @param temporary makes a folder that is removed in the end
 */
export async function pictureFolder(
  job: string,
  page: Described,
  writable: boolean,
  temporary: () => Promise<string>,
): Promise<PictureFolder> {
  const name = pictureFolderName(page.scan)
  const own = join(cacheFolder(job), name)
  try {
    if (writable) await mkdir(own, { recursive: true })
    const inside = join(cacheFolder(await realpath(job)), name)
    if ((await realpath(own)) === inside) {
      if (writable) {
        await access(inside, constants.W_OK)
        await removeHalfMade(inside)
      }
      const manifest = await readManifest(inside, page)
      if (writable || manifest !== null) return { path: inside, manifest }
    }
  } catch {
    // Pictures can be made anew at any time, so that any other folder does as well.
  }
  const other = join(await temporary(), 'pictures', name)
  await mkdir(other, { recursive: true })
  const path = await realpath(other)
  return { path, manifest: await readManifest(path, page) }
}
