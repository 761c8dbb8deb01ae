import { lstat, readFile, stat } from 'node:fs/promises'
import type { Job } from '../../../core/job/model/types.ts'
import { parseJobText } from '../../../core/job/parse-job-text.ts'
import { ScantlingError } from '../../../core/words/scantling-error.ts'
import { systemCode, systemReason } from '../files/system-reason.ts'
import { jobFile, journalFile, lockFile } from '../job-layout/job-layout.ts'
import { confineScanName } from '../scans/kept/scan-path.ts'
import { ServiceError } from '../service-error.ts'
import { type Replayed, replayJournal } from './replay-journal.ts'

/** What tells one written state of a file from another. */
export type FileStamp = string

export interface JobOnDisk extends Replayed {
  journalBytes: number
  stamp: FileStamp
}

const LOOKS = 10
const MOMENT = 20

/** Identity of the present content of job.json, without reading it. */
export async function fileStamp(path: string): Promise<FileStamp> {
  const { ino, size, mtimeNs } = await stat(path, { bigint: true })
  return `${ino}:${size}:${mtimeNs}`
}

/** @throws ServiceError unless `folder` is a folder that holds a job.json. */
export async function mustBeJobFolder(folder: string): Promise<void> {
  try {
    const entry = await stat(folder)
    if (!entry.isDirectory()) {
      throw new ServiceError(`"${folder}" is a file, not a job folder: name the folder that holds job.json.`)
    }
  } catch (error) {
    if (error instanceof ServiceError) throw error
    throw new ServiceError(`The job folder ${folder} can't be opened because ${systemReason(error)}.`)
  }
  const path = jobFile(folder)
  try {
    const entry = await lstat(path)
    if (!entry.isFile()) {
      throw new ServiceError(
        `${path} is not a plain file, so it is not read: put the job document itself there.`,
      )
    }
  } catch (error) {
    if (error instanceof ServiceError) throw error
    if (systemCode(error) === 'ENOENT') {
      throw new ServiceError(`"${folder}" is not a job folder: it holds no job.json.`)
    }
    throw new ServiceError(`${path} can't be read because ${systemReason(error)}.`)
  }
}

async function readDocument(path: string): Promise<Job> {
  let text: string
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(await readFile(path))
  } catch (error) {
    if (error instanceof TypeError) throw new ServiceError(`${path} is not UTF-8 text.`)
    throw new ServiceError(`${path} can't be read because ${systemReason(error)}.`)
  }
  if (text.trim() === '') {
    throw new ServiceError(
      `${path} is empty: take the file from a backup, or make a new job with "scantling new".`,
    )
  }
  try {
    return parseJobText(text)
  } catch (error) {
    if (error instanceof ScantlingError) throw new ServiceError(`${path}: ${error.message}`)
    throw error
  }
}

async function readJournal(path: string): Promise<Buffer> {
  try {
    const entry = await lstat(path)
    if (!entry.isFile()) {
      throw new ServiceError(
        `${path} is not a plain file, so the job is not opened: put the journal itself there.`,
      )
    }
    return await readFile(path)
  } catch (error) {
    if (error instanceof ServiceError) throw error
    if (systemCode(error) === 'ENOENT') return Buffer.alloc(0)
    throw new ServiceError(`${path} can't be read because ${systemReason(error)}.`)
  }
}

const exists = (path: string): Promise<boolean> =>
  stat(path).then(
    () => true,
    () => false,
  )

/**
 * The job as the folder holds it: job.json with the journal replayed. Changes nothing on disk.
 * Another process may be writing meanwhile: a document and a journal that do not belong together, or a last line
 * that is only half written yet, are looked at again.
 * @throws ServiceError that names the file and, in the journal, the line.
 */
export async function readJobFolder(folder: string): Promise<JobOnDisk> {
  await mustBeJobFolder(folder)
  const path = jobFile(folder)
  for (let look = 1; ; look++) {
    const stamp = await fileStamp(path)
    const document = await readDocument(path)
    const journal = await readJournal(journalFile(folder))
    const settled = look >= LOOKS || stamp === (await fileStamp(path))
    if (!settled) continue
    const replayed = replayJournal(document, journal, journalFile(folder))
    if (replayed.warning !== undefined && look < LOOKS && (await exists(lockFile(folder)))) {
      await new Promise((resolve) => setTimeout(resolve, MOMENT))
      continue
    }
    for (const sheet of replayed.job.sheets) confineScanName(sheet.scan.file, `sheet ${sheet.id}`)
    return { ...replayed, journalBytes: journal.length, stamp }
  }
}
