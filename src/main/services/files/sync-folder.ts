import { open } from 'node:fs/promises'
import { systemCode } from './system-reason.ts'

/**
 * Makes the names in a folder durable (fsync of the directory itself), so that a rename survives a power cut.
 * Windows and some network file systems can't do this for a directory and keep names durable by themselves.
 */
export async function syncFolder(folder: string): Promise<void> {
  let handle: Awaited<ReturnType<typeof open>> | undefined
  try {
    handle = await open(folder, 'r')
    await handle.sync()
  } catch (error) {
    const code = systemCode(error)
    const unsupported = code === 'EINVAL' || code === 'ENOTSUP' || code === 'EISDIR'
    if (!unsupported && process.platform !== 'win32') throw error
  } finally {
    await handle?.close()
  }
}
