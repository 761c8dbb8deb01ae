import type { AnyReason } from '../../../core/words/reason.ts'
import { systemCause } from '../files/system-reason.ts'
import { journalFile, lockFile } from '../job-layout/job-layout.ts'
import { isUnsound, type SheetScan, verifyScans } from '../scans/kept/verify-scans.ts'
import type { HolderPart } from '../words/reason-types.ts'
import { reason, type ServiceReason } from '../words/services-words.ts'
import { JobSession, type WriteAccess } from './job-session.ts'
import { JournalWriter, type OpenJournal } from './journal-writer.ts'
import { acquireLock, type LockOutcome, releaseLock } from './lock/acquire-lock.ts'
import { type LockHolder, thisHolder } from './lock/lock-holder.ts'
import { type JobOnDisk, mustBeJobFolder, readJobFolder } from './read-job-folder.ts'
import { removeStrays } from './remove-strays.ts'

export interface OpenOptions {
  /** `write` falls back to read-only, with the reason in the session, when the folder can't be had for writing. */
  mode: 'write' | 'read'
  now?: () => Date
  openJournal?: OpenJournal
}

/** What of a hold is said to a person. */
const inPart = ({ user, host, pid, since }: LockHolder): HolderPart => ({ user, host, pid, since })

const heldBy = (holder: LockHolder | undefined, path: string): ServiceReason =>
  holder === undefined
    ? reason('lock.held-by-nobody-known', { path })
    : reason('lock.held', { holder: inPart(holder), path })

async function tryLock(
  path: string,
  holder: LockHolder,
): Promise<LockOutcome | { kind: 'refused'; why: ServiceReason }> {
  try {
    return await acquireLock(path, holder)
  } catch (error) {
    return { kind: 'refused', why: reason('lock.not-written', { cause: systemCause(error) }) }
  }
}

const scanNotices = (scans: readonly SheetScan[]): AnyReason[] =>
  scans.filter(isUnsound).map(({ problem }) => problem)

async function readOnly(
  folder: string,
  because: ServiceReason,
  now: () => Date,
  notices: readonly AnyReason[] = [],
): Promise<JobSession> {
  const { job, history, warning } = await readJobFolder(folder)
  const scans = await verifyScans(job, folder)
  return new JobSession({
    folder,
    job,
    history,
    scans,
    notices: [...notices, ...(warning === undefined ? [] : [warning]), ...scanNotices(scans)],
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
  if (mode === 'read') return readOnly(folder, reason('job-folder.for-reading'), now)

  const path = lockFile(folder)
  const holder = thisHolder(now())
  const outcome = await tryLock(path, holder)
  if (outcome.kind !== 'acquired') {
    const because = outcome.kind === 'held' ? heldBy(outcome.holder, path) : outcome.why
    return readOnly(folder, because, now, [reason('job-folder.read-only', { folder, because })])
  }
  try {
    const found: JobOnDisk = await readJobFolder(folder)
    const scans = await verifyScans(found.job, folder)
    await removeStrays(folder)
    const journal = new JournalWriter(journalFile(folder), found.soundBytes, found.journalBytes, openJournal)
    const access: WriteAccess = { holder, journal, stamp: found.stamp }
    const notices: AnyReason[] = []
    if (outcome.takenOverFrom !== undefined) {
      notices.push(reason('lock.taken-over', { holder: inPart(outcome.takenOverFrom) }))
    }
    if (found.warning !== undefined) notices.push(found.warning)
    notices.push(...scanNotices(scans))
    return new JobSession({ folder, job: found.job, history: found.history, scans, notices, access, now })
  } catch (error) {
    await releaseLock(path, holder)
    throw error
  }
}
