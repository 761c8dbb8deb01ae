import { readdir, readFile } from 'node:fs/promises'
import { join, relative, sep } from 'node:path'
import { systemCause, systemCode } from '../files/system-reason.ts'
import { ServiceError } from '../service-error.ts'
import { reason } from '../words/services-words.ts'
import { contentType } from './content-types.ts'

export interface PageFile {
  bytes: Uint8Array<ArrayBuffer>
  type: string
}

/** The page's files by the path of their address: `/`, `/index.html`, `/assets/….js`. */
export type PageFiles = ReadonlyMap<string, PageFile>

/**
 * Reads the built page whole, so that a request finds a file by its exact address or finds none: no path that comes
 * over the wire reaches the disk.
 * @param folder where the build put the page
 * @throws ServiceError when the page isn't there
 */
export async function readPageFiles(folder: string): Promise<PageFiles> {
  const files = new Map<string, PageFile>()
  try {
    for (const entry of await readdir(folder, { withFileTypes: true, recursive: true })) {
      if (!entry.isFile()) continue
      const path = join(entry.parentPath, entry.name)
      const address = `/${relative(folder, path).split(sep).join('/')}`
      files.set(address, { bytes: new Uint8Array(await readFile(path)), type: contentType(entry.name) })
    }
  } catch (error) {
    if (systemCode(error) !== 'ENOENT') {
      throw new ServiceError(reason('window.not-read', { folder, cause: systemCause(error) }))
    }
  }
  const index = files.get('/index.html')
  if (index === undefined) {
    throw new ServiceError(reason('window.not-built'))
  }
  return files.set('/', index)
}
