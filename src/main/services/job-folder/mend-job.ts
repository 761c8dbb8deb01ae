import { readFile } from 'node:fs/promises'
import { basename, join } from 'node:path'
import type { Job } from '../../../core/job/model/types.ts'
import { isAbsent } from '../files/is-absent.ts'
import { replaceFile } from '../files/replace-file.ts'
import { historyFile, jobFile, lockFile, setAsideFolder } from '../job-layout/job-layout.ts'
import { ServiceError } from '../service-error.ts'
import type { LeftPart, OfferPart } from '../words/reason-types.ts'
import { reason, type ServiceReason } from '../words/services-words.ts'
import { beginHistory } from './history/begin-history.ts'
import { openForReading } from './history/history-handle.ts'
import { keepFile, momentForName } from './history/keep-file.ts'
import { sha256 } from './history/line-text.ts'
import { readDocument } from './history/read-document.ts'
import { orProblem, readWhole, type WholeHistory } from './history/read-whole.ts'
import { type AllRescues, allRescuesOf, type Rescue, rescuesOf } from './history/rescues.ts'
import { snapshotText, takePlace } from './history/snapshot.ts'
import { type DocumentSide, leftByHistory, leftByJob, type OrProblem } from './left-behind.ts'
import { releaseLock } from './lock/acquire-lock.ts'
import { lockFolder } from './lock/lock-folder.ts'
import { openJobFolder, readJobFolder } from './read-job-folder.ts'

/** What there is of something that a job may go on from, and the known edits that it does not hold; or why it can't be. */
export type Side = { job: Job; n: number; leaves: LeftPart | null } | { problem: ServiceReason }

export interface FolderLook {
  /** Why the job is not opened for editing; null: nothing is wrong. */
  trouble: ServiceReason | null
  job: Side
  history: Side
  /** What was kept when others changed the folder, and it does not hold itself; what holds most first. */
  rescues: Rescue[]
}

/** What `mendJob` is to go on from: `job`, `history`, `rescued` where only one was, or the name of one. */
export type MendFrom = string

/** The same of what was rescued. */
export const rescueOffers = (rescues: readonly Rescue[]): MendFrom[] =>
  rescues.length === 1 ? ['rescued'] : rescues.map(({ name }) => name)

/** What a look offers to go on from, as `mendJob` is given it. */
export function offersOf({
  job,
  history,
  rescues,
}: Pick<FolderLook, 'job' | 'history' | 'rescues'>): OfferPart[] {
  return [
    ...('problem' in job ? [] : [{ from: 'job', leaves: job.leaves }]),
    ...('problem' in history ? [] : [{ from: 'history', leaves: history.leaves }]),
    ...rescueOffers(rescues).map((from) => ({ from, leaves: null })),
  ]
}

async function readJobSide(folder: string): Promise<DocumentSide> {
  const { job } = takePlace((await readDocument(jobFile(folder))).job)
  return { job, n: job.edition ?? 0 }
}

interface Sides extends Pick<FolderLook, 'job' | 'history' | 'rescues'> {
  /** What was rescued and the folder holds as well. */
  held: AllRescues['held']
  /** Whether the job opens as it is. */
  opens: boolean
}

async function lookAtSides(folder: string): Promise<Sides> {
  const [job, whole, now] = await Promise.all([
    orProblem(readJobSide(folder)),
    orProblem(readWhole(folder)),
    orProblem(readJobFolder(folder)),
  ])
  const sound = 'problem' in whole ? new Set<string>() : whole.hashes
  // Of the form before there is no history yet. A job that opens though its history has a gap does not hold what a whole one does.
  const same = 'problem' in now || !isTold(whole, now.job) ? undefined : now.job
  const { rescues, held } = await allRescuesOf(folder, same, sound)
  return {
    job: 'problem' in job ? job : { ...job, leaves: leftByJob(job, whole, rescues) },
    history:
      'problem' in whole
        ? whole
        : { job: whole.job, n: whole.tip.n, leaves: leftByHistory(job, whole, rescues) },
    rescues,
    held,
    opens: !('problem' in now),
  }
}

const isTold = (whole: OrProblem<WholeHistory>, { edition }: Job): boolean =>
  'problem' in whole ? whole.problem.code === 'history.none' : whole.tip.n === edition

/** What is wrong with a job folder, and what it can be gone on from. Changes nothing. */
export async function lookAtFolder(folder: string): Promise<FolderLook> {
  const sides = await lookAtSides(folder)
  const { history } = sides
  try {
    const { history: found, warning } = await openJobFolder(folder, openForReading, false)
    if (found.form === 'before') return { trouble: null, ...sides }
    await found.handle.close()
    if (found.changedOutside === true) return { trouble: warning ?? null, ...sides }
    const ends = 'n' in history ? history.n : 0
    // Opening reads no further back than job.json, so a gap before it does not bar the job.
    const gap = reason('history.gap', { path: historyFile(folder), ends, n: found.tip.n })
    return { trouble: ends === found.tip.n ? null : gap, ...sides }
  } catch (error) {
    if (error instanceof ServiceError) return { trouble: error.reason as ServiceReason, ...sides }
    throw error
  }
}

/** A job that was mended. */
export interface Mended {
  /** The folder that holds what its files were. */
  kept: string
  n: number
  /** The file or folder that it goes on from. */
  from: string
  /** What a person should know of the lock that was there. */
  notice?: ServiceReason
  /** What was rescued and the job does not hold now either. */
  rescues: Rescue[]
  /** The known edits that it does not hold now. */
  leaves: LeftPart | null
  /** As `WholeHistory`, of the history that it goes on with. */
  begins: number | null
}

/**
 * Lets a job go on from one of its two files, or from what was rescued of it. What they were is kept in the folder
 * "set-aside" first; what is not gone on from is then made to suit. What was rescued stays where it is.
 * @param by who decides it
 * @param takeOver the lock that is to be taken over, as the refusal named it
 * @throws ServiceError when that can't be gone on from, or somebody has the job open; nothing is changed then
 */
export async function mendJob(
  folder: string,
  from: MendFrom,
  { by, now, takeOver }: { by: string; now: Date; takeOver?: string },
): Promise<Mended> {
  if (await isAbsent(folder)) {
    const rescues = (await rescuesOf(folder, undefined)).map(({ path }) => path)
    throw new ServiceError(reason('mend.folder-gone', { folder, rescues }))
  }
  const lock = await lockFolder(folder, now, takeOver)
  if (lock.kind === 'refused') {
    throw new ServiceError(reason('job-folder.read-only', { folder, because: lock.why }))
  }
  try {
    const sides = await lookAtSides(folder)
    const rescue = chosenFrom(from, sides, folder)
    const kept = await keepBoth(folder, now)
    const n =
      from === 'job'
        ? await goOnFromJob(folder, by, now)
        : await goOnFromHistory(folder, rescue ?? (await readWhole(folder)))
    const mended = await orProblem(readJobFolder(folder))
    const side = from === 'job' || from === 'history' ? sides[from] : undefined
    return {
      kept,
      n,
      leaves: side !== undefined && 'leaves' in side ? side.leaves : null,
      begins: rescue?.begins ?? null,
      from: rescue?.path ?? basename(from === 'job' ? jobFile(folder) : historyFile(folder)),
      ...(lock.notice === undefined ? {} : { notice: lock.notice }),
      rescues: await rescuesOf(folder, 'problem' in mended ? undefined : mended.job),
    }
  } finally {
    await releaseLock(lockFile(folder), lock.holder)
  }
}

/** The rescue that is meant; undefined: one of the two files is. @throws ServiceError when it can't be gone on from */
function chosenFrom(from: MendFrom, sides: Sides, folder: string): Rescue | undefined {
  const offers = offersOf(sides)
  if (from === 'job' || from === 'history') {
    const side = sides[from]
    if (!('problem' in side)) return undefined
    const file = basename(from === 'job' ? jobFile(folder) : historyFile(folder))
    throw new ServiceError(reason('mend.not-from', { file, problem: side.problem, offers }))
  }
  const { rescues } = sides
  const [only, another] = from === 'rescued' ? rescues : rescues.filter(({ name }) => name === from)
  if (only !== undefined && another === undefined) return only
  const held = sides.held.find(({ name }) => from === 'rescued' || name === from)
  if (only === undefined && held !== undefined) {
    const file = sides.opens ? null : basename(historyFile(folder))
    throw new ServiceError(reason('mend.already-held', { file, rescued: held.path }))
  }
  throw new ServiceError(
    another === undefined
      ? reason('mend.no-such-rescue', { from, offers })
      : reason('mend.which-rescue', { from, names: rescues.map(({ name }) => name) }),
  )
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

/** Every edit that a history holds is the job, and the history is its own from then on. */
async function goOnFromHistory(folder: string, { job, tip, bytes }: WholeHistory): Promise<number> {
  await replaceFile(historyFile(folder), bytes)
  await replaceFile(jobFile(folder), snapshotText(job, tip))
  return tip.n
}
