import { lstat, readFile, stat } from 'node:fs/promises'
import type { Job } from '../../../core/job/model/types.ts'
import { parseJobText } from '../../../core/job/parse-job-text.ts'
import { ScantlingError } from '../../../core/words/scantling-error.ts'
import { exists } from '../files/exists.ts'
import { systemCause, systemCode } from '../files/system-reason.ts'
import { jobFile, journalFile, lockFile } from '../job-layout/job-layout.ts'
import { confineScanName } from '../scans/kept/scan-path.ts'
import { ServiceError } from '../service-error.ts'
import { reason } from '../words/services-words.ts'
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
      throw new ServiceError(reason('job-folder.is-a-file', { folder }))
    }
  } catch (error) {
    if (error instanceof ServiceError) throw error
    throw new ServiceError(reason('job-folder.not-opened', { folder, cause: systemCause(error) }))
  }
  const path = jobFile(folder)
  try {
    const entry = await lstat(path)
    if (!entry.isFile()) {
      throw new ServiceError(reason('job-file.not-plain', { path }))
    }
  } catch (error) {
    if (error instanceof ServiceError) throw error
    if (systemCode(error) === 'ENOENT') {
      throw new ServiceError(reason('job-folder.no-job', { folder }))
    }
    throw new ServiceError(reason('job-file.not-read', { path, cause: systemCause(error) }))
  }
}

async function readDocument(path: string): Promise<Job> {
  let text: string
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(await readFile(path))
  } catch (error) {
    if (error instanceof TypeError) throw new ServiceError(reason('job-file.not-utf8', { path }))
    throw new ServiceError(reason('job-file.not-read', { path, cause: systemCause(error) }))
  }
  if (text.trim() === '') {
    throw new ServiceError(reason('job-file.empty', { path }))
  }
  try {
    return parseJobText(text)
  } catch (error) {
    if (error instanceof ScantlingError)
      throw new ServiceError(reason('job-file.unsound', { path, problem: error.reason }))
    throw error
  }
}

async function readJournal(path: string): Promise<Buffer> {
  try {
    const entry = await lstat(path)
    if (!entry.isFile()) {
      throw new ServiceError(reason('journal.not-plain', { path }))
    }
    return await readFile(path)
  } catch (error) {
    if (error instanceof ServiceError) throw error
    if (systemCode(error) === 'ENOENT') return Buffer.alloc(0)
    throw new ServiceError(reason('journal.not-read', { path, cause: systemCause(error) }))
  }
}

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
    for (const sheet of replayed.job.sheets) confineScanName(sheet.scan.file, sheet.id)
    return { ...replayed, journalBytes: journal.length, stamp }
  }
}
