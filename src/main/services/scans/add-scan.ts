import { createHash } from 'node:crypto'
import { createReadStream } from 'node:fs'
import { constants, copyFile, link, mkdir, open, unlink } from 'node:fs/promises'
import { basename, extname, join } from 'node:path'
import type { Sheet } from '../../../core/job/types.ts'
import { temporaryName } from '../files/replace-file.ts'
import { fileNameOf } from '../files/safe-name.ts'
import { syncFolder } from '../files/sync-folder.ts'
import { systemCode, systemReason } from '../files/system-reason.ts'
import { scansFolder } from '../job-folder/layout.ts'
import { ServiceError } from '../service-error.ts'
import { mustDecode } from './decode-scan.ts'
import { hashFile } from './hash-file.ts'
import { inspectScan, type ScanFacts } from './inspect-scan.ts'

export interface AddedScan {
  /** What a sheet on the first page of this scan says of it. */
  scan: Sheet['scan']
  facts: ScanFacts
}

/** A scan that is to be taken in: where it lies, and what messages call it. */
export interface GivenScan {
  path: string
  called: string
}

const numbered = (name: string, number: number): string => {
  if (number === 1) return name
  const extension = extname(name)
  return `${name.slice(0, name.length - extension.length)}-${number}${extension}`
}

async function copyHashed(from: string, to: string): Promise<string> {
  const hash = createHash('sha256')
  const target = await open(to, 'wx')
  try {
    for await (const chunk of createReadStream(from)) {
      const bytes = chunk as Buffer
      hash.update(bytes)
      for (let done = 0; done < bytes.length; ) {
        done += (await target.write(bytes, done)).bytesWritten
      }
    }
    await target.sync()
  } finally {
    await target.close()
  }
  return hash.digest('hex')
}

/** Gives a finished copy its name, unless the name is taken: false then. */
async function giveName(temporary: string, path: string): Promise<boolean> {
  try {
    await link(temporary, path)
    return true
  } catch (error) {
    if (systemCode(error) === 'EEXIST') return false
  }
  try {
    await copyFile(temporary, path, constants.COPYFILE_EXCL)
    return true
  } catch (error) {
    if (systemCode(error) === 'EEXIST') return false
    throw error
  }
}

/**
 * Takes a scan into a job's scans/ folder, byte for byte. A different file of the same name is never overwritten:
 * the new one gets `-2`, `-3` … after its name; the same file a second time is not stored twice.
 * @param called what messages call the scan, when a person knows it by another name than its path
 * @throws ServiceError when it is not a whole picture or can't be copied; the folder is then as it was.
 */
export async function addScan(folder: string, path: string, called: string = path): Promise<AddedScan> {
  const facts = await inspectScan(path, called)
  await mustDecode(path, called)
  const scans = scansFolder(folder)
  const name = fileNameOf(basename(path), 'scan')
  const temporary = temporaryName(join(scans, name))
  try {
    await mkdir(scans, { recursive: true })
    const sha256 = await copyHashed(path, temporary)
    for (let number = 1; ; number++) {
      const file = numbered(name, number)
      const named = await giveName(temporary, join(scans, file))
      if (!named && (await hashFile(join(scans, file)).catch(() => '')) !== sha256) continue
      await syncFolder(scans)
      const { width, height, dpi } = facts
      return { scan: { file, sha256, page: 1, width, height, ...(dpi === undefined ? {} : { dpi }) }, facts }
    }
  } catch (error) {
    throw new ServiceError(`The scan ${called} can't be copied into ${scans} because ${systemReason(error)}.`)
  } finally {
    await unlink(temporary).catch(() => undefined)
  }
}
