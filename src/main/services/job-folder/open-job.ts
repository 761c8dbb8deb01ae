import type { Job } from '../../../core/job/model/types.ts'
import type { AnyReason } from '../../../core/words/reason.ts'
import { historyFile, jobFile, lockFile, setAsideFolder } from '../job-layout/job-layout.ts'
import { loginName } from '../people/login-name.ts'
import { isUnsound, type SheetScan, verifyScans } from '../scans/kept/verify-scans.ts'
import { reason } from '../words/services-words.ts'
import { CarriedHistory } from './history/carried-history.ts'
import { carryOver } from './history/carry-over.ts'
import { HistoryFile } from './history/history-file.ts'
import { type OpenHistory, openHistoryFile } from './history/history-handle.ts'
import { JobFile } from './history/job-file.ts'
import { keepFile, momentForName } from './history/keep-file.ts'
import { lastEdit } from './history/last-edit.ts'
import { sha256 } from './history/line-text.ts'
import { NOTHING } from './history/read-tail.ts'
import { rescuesOf } from './history/rescues.ts'
import { loadStacks, noStacks, type Stacks } from './history/undo-stacks.ts'
import { JobSession, type WriteAccess } from './job-session.ts'
import { releaseLock } from './lock/acquire-lock.ts'
import { lockFolder } from './lock/lock-folder.ts'
import { type JobOnDisk, mustBeJobFolder, openJobFolder, readJobFolder } from './read-job-folder.ts'
import { removeStrays } from './remove-strays.ts'

export interface OpenOptions {
  /** `write` falls back to read-only, with the reason in the session, when the folder can't be had for writing. */
  mode: 'write' | 'read'
  /** The lock that is to be taken over, as the refusal named it (`offeredTakeOver`), and no other one. */
  takeOver?: string
  /** Who is at work, where that is known: the lock says so to others. */
  person?: string
  now?: () => Date
  openHistory?: OpenHistory
}

const scanNotices = (scans: readonly SheetScan[]): AnyReason[] =>
  scans.filter(isUnsound).map(({ problem }) => problem)

async function readOnly(
  folder: string,
  because: AnyReason,
  now: () => Date,
  notices: readonly AnyReason[] = [],
): Promise<JobSession> {
  const { job, warning: found } = await readJobFolder(folder)
  const warning = found?.code === because.code ? undefined : found
  const scans = await verifyScans(job, folder)
  return new JobSession({
    folder,
    job,
    stacks: noStacks,
    scans,
    tip: NOTHING,
    notices: [...notices, ...(warning === undefined ? [] : [warning]), ...scanNotices(scans)],
    readOnlyBecause: because,
    now,
  })
}

/**
 * Opens a job folder: what was done since job.json was written is made, scans are checked. Reading changes nothing on disk.
 * @throws ServiceError when the folder does not hold a sound job; nothing is changed then.
 */
export async function openJob(folder: string, options: OpenOptions): Promise<JobSession> {
  const { mode, now = () => new Date(), openHistory = openHistoryFile } = options
  await mustBeJobFolder(folder)
  if (mode === 'read') return readOnly(folder, reason('job-folder.for-reading'), now)

  const lock = await lockFolder(folder, now(), options.takeOver, options.person)
  if (lock.kind === 'refused') {
    const because = lock.why
    return readOnly(folder, because, now, [reason('job-folder.read-only', { folder, because })])
  }
  const { holder } = lock
  const path = lockFile(folder)
  let found: JobOnDisk | undefined
  try {
    found = await openJobFolder(folder, openHistory, true)
    if (found.history.form === 'history' && found.history.changedOutside && found.warning !== undefined) {
      await found.history.handle.close()
      await releaseLock(path, holder)
      return readOnly(folder, found.warning, now)
    }
    const scans = await verifyScans(found.job, folder)
    await removeStrays(folder)
    const { document } = found
    const jobJson = new JobFile(jobFile(folder), document.stamp, document.bytes)
    const held = await holdHistory(folder, found, jobJson, { now, openHistory, person: options.person })
    const notices: AnyReason[] = []
    if (lock.notice !== undefined) notices.push(lock.notice)
    if (found.warning !== undefined) notices.push(found.warning)
    for (const { path, tip, last, job: kept } of await rescuesOf(folder, found.job))
      notices.push(reason('rescue.holds-more', { path, n: tip.n, ...lastEdit(kept, last), folder }))
    notices.push(...scanNotices(scans))
    const { history, job, stacks, savedAt } = held
    const access: WriteAccess = { holder, history, document: jobJson, savedAt }
    return new JobSession({ folder, job, stacks, scans, tip: history.tip, notices, access, now })
  } catch (error) {
    if (found?.history.form === 'history') await found.history.handle.close()
    // What went wrong first is what is said.
    await releaseLock(path, holder).catch(() => undefined)
    throw error
  }
}

interface Held extends Pick<WriteAccess, 'history' | 'savedAt'> {
  job: Job
  stacks: Stacks
}

/** The history of a folder, to be written to; one of the form before is carried over with its first edit. */
async function holdHistory(
  folder: string,
  { job, document, history: found }: JobOnDisk,
  jobJson: JobFile,
  { now, openHistory, person }: { now: () => Date; openHistory: OpenHistory; person?: string | undefined },
): Promise<Held> {
  const path = historyFile(folder)
  const setAside = async (bytes: Buffer): Promise<void> => {
    await keepFile(setAsideFolder(folder), `history-${momentForName(now())}.ndjson`, bytes)
  }
  if (found.form === 'history') {
    const { handle, tip, size, savedAt, refs } = found
    const history = new HistoryFile({ path, open: openHistory, handle, tip, size, setAside })
    const stacks = await loadStacks(refs, job, (...step) => history.stepAt(...step))
    await history.rest()
    return { history, job, stacks, savedAt }
  }
  const from = sha256(document.bytes)
  const by = job.people[0]?.id ?? (person || loginName())
  const carried = carryOver(found.document, found.lines, job, { at: now().toISOString(), by, from })
  const files = { job: document.bytes, journal: found.journal }
  const before = { folder, path, carried, files, jobFile: jobJson, open: openHistory, setAside }
  const { stacks, tip } = carried
  return { history: new CarriedHistory(before), job: carried.job, stacks, savedAt: tip.n }
}
