import { randomBytes } from 'node:crypto'
import { open, rename, unlink } from 'node:fs/promises'
import { dirname } from 'node:path'
import { syncFolder } from './sync-folder.ts'

/** What follows a file's own name while it is being written: `job.json.1f2e3d4c.tmp`. */
export const TEMPORARY_SUFFIX = /\.[0-9a-f]{16}\.tmp$/

export const temporaryName = (path: string): string => `${path}.${randomBytes(8).toString('hex')}.tmp`

/**
 * Replaces a file whole: written beside it, fsynced, renamed over it, folder fsynced.
 * A reader sees either the old content or the new; when it fails the old file is untouched.
 */
export async function replaceFile(path: string, content: string | Uint8Array): Promise<void> {
  const temporary = temporaryName(path)
  try {
    const handle = await open(temporary, 'wx')
    try {
      await handle.writeFile(content)
      await handle.sync()
    } finally {
      await handle.close()
    }
    await rename(temporary, path)
  } catch (error) {
    await unlink(temporary).catch(() => undefined)
    throw error
  }
  await syncFolder(dirname(path))
}
