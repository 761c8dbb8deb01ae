import { link, open, unlink } from 'node:fs/promises'
import { dirname } from 'node:path'
import { syncFolder } from '../../files/sync-folder.ts'
import { systemCode } from '../../files/system-reason.ts'
import { type LockHolder, writeHolder } from './lock-holder.ts'

const NO_LINKS: ReadonlySet<string | undefined> = new Set(['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS'])

/** Writes a file that is not there yet, to disk. @throws the system's error; nothing of the file is left then */
async function writeNew(path: string, text: string): Promise<void> {
  const handle = await open(path, 'wx')
  try {
    try {
      await handle.writeFile(text)
      await handle.sync()
    } finally {
      await handle.close()
    }
  } catch (error) {
    await unlink(path).catch(() => undefined)
    throw error
  }
}

async function linkWhole(path: string, holder: LockHolder): Promise<void> {
  const beside = `${path}.${holder.token}.tmp`
  await writeNew(beside, writeHolder(holder))
  try {
    await link(beside, path)
  } finally {
    await unlink(beside).catch(() => undefined)
  }
}

/**
 * Creates the lock file only if nothing is there: true when this call created it. It is on disk before it is there by
 * its name, and its name is on disk before this returns: after a power cut there is no lock or a whole one. On a file
 * system without hard links it is there by its name for an instant before it is filled.
 * @throws the system's error; there is no lock of this holder then
 */
export async function createLock(path: string, holder: LockHolder): Promise<boolean> {
  try {
    await linkWhole(path, holder).catch(async (error: unknown) => {
      if (!NO_LINKS.has(systemCode(error))) throw error
      await writeNew(path, writeHolder(holder))
    })
  } catch (error) {
    if (systemCode(error) === 'EEXIST') return false
    throw error
  }
  await keepName(path)
  return true
}

/** Brings the name of a lock of this process's own to disk. @throws the system's error; the lock is gone then */
export async function keepName(path: string): Promise<void> {
  try {
    await syncFolder(dirname(path))
  } catch (error) {
    await unlink(path).catch(() => undefined)
    throw error
  }
}
