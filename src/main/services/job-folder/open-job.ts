import { systemReason } from '../files/system-reason.ts'
import { journalFile, lockFile } from '../job-layout/job-layout.ts'
import { verifyScans } from '../scans/kept/verify-scans.ts'
import { JobSession, type WriteAccess } from './job-session.ts'
import { JournalWriter, type OpenJournal } from './journal-writer.ts'
import { acquireLock, type LockOutcome, releaseLock } from './lock/acquire-lock.ts'
import { describeHolder, type LockHolder, thisHolder } from './lock/lock-holder.ts'
import { type JobOnDisk, mustBeJobFolder, readJobFolder } from './read-job-folder.ts'
import { removeStrays } from './remove-strays.ts'

export interface OpenOptions {
  /** `write` falls back to read-only, with the reason in the session, when the folder can't be had for writing. */
  mode: 'write' | 'read'
  now?: () => Date
  openJournal?: OpenJournal
}

const heldBy = (holder: LockHolder | undefined, path: string): string => {
  const who = `it is open for writing by ${describeHolder(holder)}`
  if (holder !== undefined) return `${who}; ask them to close it.`
  return `${who}; when nobody has the job open, delete ${path} and open it again.`
}

async function tryLock(
  path: string,
  holder: LockHolder,
): Promise<LockOutcome | { kind: 'refused'; why: string }> {
  try {
    return await acquireLock(path, holder)
  } catch (error) {
    return { kind: 'refused', why: `the folder can't be written because ${systemReason(error)}.` }
  }
}

async function readOnly(
  folder: string,
  because: string,
  now: () => Date,
  notices: readonly string[] = [],
): Promise<JobSession> {
  const { job, history, warning } = await readJobFolder(folder)
  const scans = await verifyScans(job, folder)
  return new JobSession({
    folder,
    job,
    history,
    scans,
    notices: [
      ...notices,
      ...(warning === undefined ? [] : [warning]),
      ...scans.flatMap(({ sentence }) => (sentence === '' ? [] : [sentence])),
    ],
    readOnlyBecause: because,
    now,
  })
}

/**
 * Opens a job folder: journal replayed, scans checked. Reading changes nothing on disk.
 * @throws ServiceError when the folder does not hold a sound job; nothing is changed then.
 */
export async function openJob(folder: string, options: OpenOptions): Promise<JobSession> {
  const { mode, now = () => new Date(), openJournal } = options
  await mustBeJobFolder(folder)
  if (mode === 'read') return readOnly(folder, 'it was opened for reading.', now)

  const path = lockFile(folder)
  const holder = thisHolder(now())
  const outcome = await tryLock(path, holder)
  if (outcome.kind !== 'acquired') {
    const because = outcome.kind === 'held' ? heldBy(outcome.holder, path) : outcome.why
    return readOnly(folder, because, now, [`The job ${folder} is open read-only: ${because}`])
  }
  try {
    const found: JobOnDisk = await readJobFolder(folder)
    const scans = await verifyScans(found.job, folder)
    await removeStrays(folder)
    const journal = new JournalWriter(journalFile(folder), found.soundBytes, found.journalBytes, openJournal)
    const access: WriteAccess = { holder, journal, stamp: found.stamp }
    const notices: string[] = []
    if (outcome.takenOverFrom !== undefined) {
      notices.push(
        `The job was left open by ${describeHolder(outcome.takenOverFrom)}, a process that has ended; ` +
          'its lock was taken over and its acknowledged edits are here.',
      )
    }
    if (found.warning !== undefined) notices.push(found.warning)
    for (const { sentence } of scans) if (sentence !== '') notices.push(sentence)
    return new JobSession({ folder, job: found.job, history: found.history, scans, notices, access, now })
  } catch (error) {
    await releaseLock(path, holder)
    throw error
  }
}
