import { lstat, readFile, stat } from 'node:fs/promises'
import type { HistoryLine } from '../../../core/job/history/history-line.ts'
import type { Job } from '../../../core/job/model/types.ts'
import { exists } from '../files/exists.ts'
import { systemCause, systemCode } from '../files/system-reason.ts'
import { historyFile, jobFile, journalFile, lockFile } from '../job-layout/job-layout.ts'
import { confineScanName } from '../scans/kept/scan-path.ts'
import { ServiceError } from '../service-error.ts'
import { reason, type ServiceReason } from '../words/services-words.ts'
import { type HistoryHandle, type OpenHistory, openForReading } from './history/history-handle.ts'
import { type FileStamp, fileStamp } from './history/job-file.ts'
import { readDocument } from './history/read-document.ts'
import { type JobInHistory, readHistory } from './history/read-history.ts'
import type { Torn } from './history/read-tail.ts'
import { takePlace } from './history/snapshot.ts'
import { replayJournal } from './journal/replay-journal.ts'
import { nameRescue } from './name-rescue.ts'

/** What a job folder holds, whichever form it has. */
export interface JobOnDisk {
  job: Job
  /** What was set aside. */
  warning?: ServiceReason
  document: { bytes: Buffer; stamp: FileStamp }
  history: FoundHistory
}

/** A history and where it stands; or the document and the edits of its journal, of the form before. */
export type FoundHistory =
  | ({ form: 'history'; handle: HistoryHandle } & JobInHistory)
  | { form: 'before'; document: Job; lines: HistoryLine[]; journal: Buffer }

const LOOKS = 10
const MOMENT = 20

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
      const problem = reason('job-folder.no-job', { folder })
      const kept = await exists(historyFile(folder))
      throw new ServiceError(kept ? reason('job-file.in-history', { problem, folder }) : problem)
    }
    throw new ServiceError(reason('job-file.not-read', { path, cause: systemCause(error) }))
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

/** The history, open; undefined where there is none. */
async function openHistory(path: string, open: OpenHistory): Promise<HistoryHandle | undefined> {
  try {
    return await open(path)
  } catch (error) {
    if (error instanceof ServiceError) throw error
    if (systemCode(error) === 'ENOENT') return undefined
    throw new ServiceError(reason('history.not-read', { path, cause: systemCause(error) }))
  }
}

async function readOnce(folder: string, open: OpenHistory): Promise<JobOnDisk> {
  const path = jobFile(folder)
  const stamp = await fileStamp(path).catch((error: unknown): never => {
    throw new ServiceError(reason('job-file.not-read', { path, cause: systemCause(error) }))
  })
  const ofHistory = historyFile(folder)
  const found = await readDocument(path).catch(async (error: unknown) => {
    if (!(error instanceof ServiceError) || !(await exists(ofHistory))) throw error
    const problem = error.reason as ServiceReason
    throw new ServiceError(reason('job-file.in-history', { problem, folder }))
  })
  const document = { bytes: found.bytes, stamp }
  const handle = await openHistory(ofHistory, open)
  if (handle === undefined) {
    const { job, place } = takePlace(found.job)
    if (place !== undefined) {
      throw new ServiceError(reason('history.missing', { path: ofHistory, n: place.line, folder }))
    }
    const journal = await readJournal(journalFile(folder))
    const { job: now, lines, warning } = replayJournal(job, journal, journalFile(folder))
    const history: FoundHistory = { form: 'before', document: job, lines, journal }
    return { job: now, document, history, ...(warning === undefined ? {} : { warning }) }
  }
  try {
    const history = await readHistory(handle, found, { folder, path: ofHistory, document: path })
    const { job, tip, torn } = history
    const warning = history.changedOutside
      ? reason('job-file.changed-at-the-end', { path, n: tip.n, folder })
      : torn && notGoneOnFrom(torn, ofHistory, tip.n)
    return {
      job,
      document,
      history: { form: 'history', handle, ...history },
      ...(warning === undefined ? {} : { warning }),
    }
  } catch (error) {
    await handle.close()
    throw error
  }
}

/** What is said of what follows the last whole line. */
const notGoneOnFrom = ({ begins, alien }: Torn, path: string, n: number): ServiceReason =>
  reason(alien ? 'history.alien' : 'history.torn', { path, n, begins })

const closed = async ({ history }: JobOnDisk): Promise<void> => {
  if (history.form === 'history') await history.handle.close()
}

/**
 * The job as the folder holds it: job.json with what was done since. Changes nothing on disk.
 * Another process may be writing meanwhile: what does not belong together, or a last line that is only half written
 * yet, is looked at again.
 * @param open how the history is opened, which stays so: whoever asks closes it
 * @param alone whether nobody else can be writing
 * @throws ServiceError that names the file, and says what to do
 */
export async function openJobFolder(folder: string, open: OpenHistory, alone: boolean): Promise<JobOnDisk> {
  try {
    const found = await openSettled(folder, open, alone)
    return found.warning === undefined
      ? found
      : { ...found, warning: await nameRescue(found.warning, folder) }
  } catch (error) {
    if (!(error instanceof ServiceError)) throw error
    throw new ServiceError(await nameRescue(error.reason as ServiceReason, folder))
  }
}

async function openSettled(folder: string, open: OpenHistory, alone: boolean): Promise<JobOnDisk> {
  await mustBeJobFolder(folder)
  for (let look = 1; ; look++) {
    const again = !alone && look < LOOKS && (await exists(lockFile(folder)))
    let found: JobOnDisk
    try {
      found = await readOnce(folder, open)
    } catch (error) {
      if (!again) throw error
      await new Promise((resolve) => setTimeout(resolve, MOMENT))
      continue
    }
    const settled = found.document.stamp === (await fileStamp(jobFile(folder)).catch(() => ''))
    if (again && (found.warning !== undefined || !settled)) {
      await closed(found)
      await new Promise((resolve) => setTimeout(resolve, MOMENT))
      continue
    }
    try {
      for (const sheet of found.job.sheets) confineScanName(sheet.scan.file, sheet)
    } catch (error) {
      await closed(found)
      throw error
    }
    return found
  }
}

/** The same, for whoever only reads. */
export async function readJobFolder(folder: string): Promise<Pick<JobOnDisk, 'job' | 'warning'>> {
  const found = await openJobFolder(folder, openForReading, false)
  await closed(found)
  return found
}
