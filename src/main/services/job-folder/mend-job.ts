import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Job } from '../../../core/job/model/types.ts'
import { replaceFile } from '../files/replace-file.ts'
import { historyFile, jobFile, lockFile, setAsideFolder } from '../job-layout/job-layout.ts'
import { ServiceError } from '../service-error.ts'
import { reason, type ServiceReason } from '../words/services-words.ts'
import { beginHistory } from './history/begin-history.ts'
import { openForReading } from './history/history-handle.ts'
import { keepFile, momentForName } from './history/keep-file.ts'
import { isBegin, type Tip } from './history/kept-line.ts'
import { sha256 } from './history/line-text.ts'
import { readTail } from './history/read-tail.ts'
import { Replay, type Replayed } from './history/replay-lines.ts'
import { snapshotText, takePlace } from './history/snapshot.ts'
import { releaseLock } from './lock/acquire-lock.ts'
import { lockFolder } from './lock/lock-folder.ts'
import { mustBeJobFolder, openJobFolder, readDocument } from './read-job-folder.ts'

/** What a job whose files do not belong together can be gone on from. */
export type MendFrom = 'job' | 'history'

/** What there is of one of the two; or why it can't be gone on from. */
export type Side = { job: Job; n: number } | { problem: ServiceReason }

export interface FolderLook {
  /** Why the job is not opened for editing; null: nothing is wrong. */
  trouble: ServiceReason | null
  job: Side
  history: Side
}

interface HistorySide extends Replayed {
  tip: Tip
  /** Id of the job that it is of. */
  of: string
  /** The whole lines, as they are in the file. */
  bytes: Buffer
}

/** All that a history holds, from its top up to the last line that goes on from the one before it. */
async function readWhole(folder: string): Promise<HistorySide> {
  const path = historyFile(folder)
  const handle = await openForReading(path).catch((error: unknown) => {
    if (error instanceof ServiceError) throw error
    throw new ServiceError(reason('history.none', { path }))
  })
  try {
    const replay = new Replay({ path, folder })
    let of = ''
    const { tip } = await readTail(handle, null, (placed) => {
      if (isBegin(placed.line)) of = placed.line.job
      replay.take(placed)
    })
    const now = replay.done()
    const bytes = Buffer.alloc(tip.end)
    await handle.read(bytes, 0, tip.end, 0)
    return { ...now, tip, of, bytes }
  } finally {
    await handle.close()
  }
}

/** A service's answer, or the reason that it refused. */
async function orProblem<T extends object>(work: Promise<T>): Promise<T | { problem: ServiceReason }> {
  try {
    return await work
  } catch (error) {
    if (error instanceof ServiceError) return { problem: error.reason as ServiceReason }
    throw error
  }
}

async function readJobSide(folder: string): Promise<{ job: Job; n: number }> {
  const { job } = takePlace((await readDocument(jobFile(folder))).job)
  return { job, n: job.edition ?? 0 }
}

/** What is wrong with a job folder, and what it can be gone on from. Changes nothing. */
export async function lookAtFolder(folder: string): Promise<FolderLook> {
  const [job, whole] = await Promise.all([orProblem(readJobSide(folder)), orProblem(readWhole(folder))])
  const history = 'problem' in whole ? whole : { job: whole.job, n: whole.tip.n }
  try {
    const { history: found, warning } = await openJobFolder(folder, openForReading, false)
    if (found.form === 'before') return { trouble: null, job, history }
    await found.handle.close()
    if (found.changedOutside === true) return { trouble: warning ?? null, job, history }
    const ends = 'n' in history ? history.n : 0
    // Opening reads no further back than job.json, so a gap before it does not bar the job.
    const gap = reason('history.gap', { path: historyFile(folder), ends, n: found.tip.n })
    return { trouble: ends === found.tip.n ? null : gap, job, history }
  } catch (error) {
    if (error instanceof ServiceError) return { trouble: error.reason as ServiceReason, job, history }
    throw error
  }
}

/**
 * Lets a job go on from one of its two files. What they were is kept in the folder "set-aside" first; the one that is not
 * gone on from is then made to suit.
 * @param by who decides it
 * @param takeOver the lock that is to be taken over, as the refusal named it
 * @returns the folder that holds what they were
 * @throws ServiceError when that file can't be gone on from, or somebody has the job open
 */
export async function mendJob(
  folder: string,
  from: MendFrom,
  { by, now, takeOver }: { by: string; now: Date; takeOver?: string },
): Promise<{ kept: string; n: number }> {
  const lock = await lockFolder(folder, now, takeOver)
  if (lock.kind === 'refused') {
    throw new ServiceError(reason('job-folder.read-only', { folder, because: lock.why }))
  }
  try {
    const kept = await keepBoth(folder, now)
    const n = from === 'job' ? await goOnFromJob(folder, by, now) : await goOnFromHistory(folder)
    return { kept, n }
  } finally {
    await releaseLock(lockFile(folder), lock.holder)
  }
}

async function keepBoth(folder: string, now: Date): Promise<string> {
  const kept = join(setAsideFolder(folder), `before-mending-${momentForName(now)}`)
  for (const [name, path] of [
    ['job.json', jobFile(folder)],
    ['history.ndjson', historyFile(folder)],
  ] as const) {
    const bytes = await readFile(path).catch(() => undefined)
    if (bytes !== undefined) await keepFile(kept, name, bytes)
  }
  return kept
}

/** The document as it is becomes a line of the history that everything after goes on from; what could be undone before can't be any more. */
async function goOnFromJob(folder: string, by: string, now: Date): Promise<number> {
  await mustBeJobFolder(folder)
  const found = await readDocument(jobFile(folder))
  const { job } = takePlace(found.job)
  const whole = await orProblem(readWhole(folder))
  const ours = !('problem' in whole) && (job.id === undefined || whole.of === job.id) ? whole : undefined
  const how = { at: now.toISOString(), by, from: sha256(found.bytes) }
  const begun = beginHistory(
    ours === undefined ? job : { ...job, id: ours.of },
    ours === undefined ? how : { ...how, after: ours.tip },
  )
  await replaceFile(
    historyFile(folder),
    Buffer.concat([ours?.bytes ?? Buffer.alloc(0), Buffer.from(begun.text)]),
  )
  await replaceFile(jobFile(folder), snapshotText(begun.job, begun.tip))
  return begun.tip.n
}

async function goOnFromHistory(folder: string): Promise<number> {
  const { job, tip, bytes } = await readWhole(folder)
  await replaceFile(historyFile(folder), bytes)
  await replaceFile(jobFile(folder), snapshotText(job, tip))
  return tip.n
}
