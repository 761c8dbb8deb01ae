import { randomBytes } from 'node:crypto'
import { rename, rm, writeFile } from 'node:fs/promises'

/** A file is there whole or not at all. @param mark what follows its name until it is whole */
export async function putInPlace(path: string, bytes: Uint8Array | string, mark: string): Promise<void> {
  const temporary = `${path}.${mark}-${randomBytes(4).toString('hex')}.tmp`
  try {
    await writeFile(temporary, bytes, { flag: 'wx' })
    await rename(temporary, path)
  } catch (error) {
    await rm(temporary, { force: true }).catch(() => undefined)
    throw error
  }
}
