import { createHash } from 'node:crypto'
import { createReadStream } from 'node:fs'
import { constants, copyFile, link, mkdir, open, unlink } from 'node:fs/promises'
import { basename, extname, join } from 'node:path'
import type { Sheet } from '../../../../core/job/model/types.ts'
import type { AnyReason } from '../../../../core/words/reason.ts'
import { temporaryName } from '../../files/replace-file.ts'
import { fileNameOf } from '../../files/safe-name.ts'
import { syncFolder } from '../../files/sync-folder.ts'
import { systemCause, systemCode } from '../../files/system-reason.ts'
import { scansFolder } from '../../job-layout/job-layout.ts'
import { LIMITS } from '../../limits/kept-limits.ts'
import { ServiceError } from '../../service-error.ts'
import { reason } from '../../words/services-words.ts'
import type { GivenScan } from '../file/given-scan.ts'
import { hashFile } from '../kept/hash-file.ts'
import type { ReadWith } from '../reader/read-scan.ts'
import { type ReadSheet, readSheets } from './read-sheets.ts'

export interface AddedScan {
  /** What the first sheet of this scan says of it. */
  scan: Sheet['scan']
  /** What each of its sheets says of it. */
  scans: Sheet['scan'][]
  /** Pages in the file that are sheets of their own. */
  pages: number
  /** Whether a person chose the pages. */
  chosen: boolean
  /** What a person should know of its pages. */
  remarks: AnyReason[]
  /** What opened it. */
  password?: string
}

/** @param path where it lies; messages call it that as well */
export const givenScan = (path: string): GivenScan => ({ path, called: path })

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
 * Takes a scan into a job's scans/ folder, byte for byte and once, whatever the number of its pages. A different file
 * of the same name is never overwritten: the new one gets `-2`, `-3` … after its name; the same file a second time is
 * not stored twice.
 * @throws ServiceError when a page that is wanted is not whole, or the file can't be copied; the folder is then as it
 *   was. ScanLocked when it wants a password.
 */
export async function addScan(
  folder: string,
  given: GivenScan | string,
  how: Pick<ReadWith, 'limits'> = { limits: LIMITS },
): Promise<AddedScan> {
  const scan = typeof given === 'string' ? givenScan(given) : given
  return storeScan(folder, scan, await readSheets(scan, how))
}

/**
 * Copies a scan that was read; see `addScan`.
 * @throws ServiceError when it can't be copied; the folder is then as it was
 */
export async function storeScan(
  folder: string,
  { path, called, pages: wanted, password }: GivenScan,
  { pages, sheets, remarks }: { pages: number; sheets: readonly ReadSheet[]; remarks: AnyReason[] },
): Promise<AddedScan> {
  const kept = await keep(folder, path, called)
  const scans = sheets.map((sheet) => ({ ...kept, ...sheet }))
  const [scan] = scans
  if (scan === undefined) throw new ServiceError(reason('scan.no-page-chosen', { scan: called }))
  const chosen = wanted !== undefined
  return { scan, scans, pages, chosen, remarks, ...(password === undefined ? {} : { password }) }
}

async function keep(
  folder: string,
  path: string,
  called: string,
): Promise<Pick<Sheet['scan'], 'file' | 'sha256'>> {
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
      return { file, sha256 }
    }
  } catch (error) {
    throw new ServiceError(
      reason('scan.not-copied', { scan: called, folder: scans, cause: systemCause(error) }),
    )
  } finally {
    await unlink(temporary).catch(() => undefined)
  }
}
