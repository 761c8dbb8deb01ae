import { mkdir, open } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { syncFolder } from '../../files/sync-folder.ts'
import { systemCode } from '../../files/system-reason.ts'

/**
 * Writes bytes to a file of a folder that is made where it is missing, durably; a name that is taken gets a number.
 * @returns the path
 */
export async function keepFile(folder: string, name: string, bytes: Uint8Array): Promise<string> {
  if ((await mkdir(folder, { recursive: true })) !== undefined) await syncFolder(dirname(folder))
  const dot = name.lastIndexOf('.')
  for (let number = 1; ; number++) {
    const path = join(folder, number === 1 ? name : `${name.slice(0, dot)}-${number}${name.slice(dot)}`)
    try {
      const handle = await open(path, 'wx')
      try {
        await handle.writeFile(bytes)
        await handle.sync()
      } finally {
        await handle.close()
      }
      await syncFolder(folder)
      return path
    } catch (error) {
      if (systemCode(error) !== 'EEXIST') throw error
    }
  }
}

/** A moment as a part of a file's name: `2026-11-30T09-12-05`. */
export const momentForName = (now: Date): string => now.toISOString().slice(0, 19).replaceAll(':', '-')
