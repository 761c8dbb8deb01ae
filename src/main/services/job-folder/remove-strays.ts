import { readdir, unlink } from 'node:fs/promises'
import { join } from 'node:path'
import { TEMPORARY_SUFFIX } from '../files/replace-file.ts'
import { scansFolder } from '../job-layout/job-layout.ts'
import { hereIn } from './lock/here.ts'
import { lookAtLock } from './lock/look-at-lock.ts'
import { isGone } from './lock/why-gone.ts'

const namesIn = (folder: string): Promise<string[]> => readdir(folder).catch(() => [])

/**
 * Removes what a process that died left half-written. Only for whoever holds the lock: nobody else can be writing
 * then, except a process that is just trying for the lock, whose file is left alone while it lives.
 */
export async function removeStrays(folder: string): Promise<void> {
  const here = await hereIn(folder)
  for (const name of await namesIn(folder)) {
    const path = join(folder, name)
    if (/^(?:job\.json|history\.ndjson)\./.test(name) && TEMPORARY_SUFFIX.test(name)) {
      await unlink(path).catch(() => undefined)
    } else if (name.startsWith('.lock.')) {
      const found = await lookAtLock(path).catch(() => undefined)
      if (found !== undefined && isGone(found, here)) await unlink(path).catch(() => undefined)
    }
  }
  const scans = scansFolder(folder)
  for (const name of await namesIn(scans)) {
    if (TEMPORARY_SUFFIX.test(name)) await unlink(join(scans, name)).catch(() => undefined)
  }
}
