import type { Job } from '../../../../core/job/model/types.ts'
import { ServiceError } from '../../service-error.ts'
import { reason } from '../../words/services-words.ts'
import { type FoundLine, findLine, lineAt } from './find-line.ts'
import type { HistoryHandle } from './history-handle.ts'
import { isBegin, type Tip } from './kept-line.ts'
import { sha256 } from './line-text.ts'
import { readTail, type Torn } from './read-tail.ts'
import { NO_REFS, Replay, type Replayed } from './replay-lines.ts'
import { isAsWritten, takePlace } from './snapshot.ts'
import { refsAfter } from './undo-stacks.ts'

/** A job.json, and what it says. */
export interface ReadDocument {
  bytes: Buffer
  job: Job
}

/** A job as its history leaves it. */
export interface JobInHistory extends Replayed {
  /** The last line. */
  tip: Tip
  /** The line that job.json was written at; -1: it is an older one, which the history was made of. */
  savedAt: number
  torn?: Torn
  /** job.json is not as it was written at the last line: it can be read, but not gone on from without being asked. */
  changedOutside?: true
  /** Bytes of the history. */
  size: number
}

interface Where {
  folder: string
  /** Of the history. */
  path: string
  /** Of job.json. */
  document: string
}

/** Where to read on from: a line, and the job as it stood there. */
interface Start extends Replayed {
  tip: Tip
  savedAt: number
  changedOutside?: true
}

/**
 * The job in a document and the tail of its history: what was done after the line that the document was written at.
 * @throws ServiceError where they do not belong together, which says what to do
 */
export async function readHistory(
  handle: Pick<HistoryHandle, 'read'>,
  document: ReadDocument,
  where: Where,
): Promise<JobInHistory> {
  const start = (await fromPlace(handle, document, where)) ?? (await fromBeginning(handle, document, where))
  const replay = new Replay(where, start)
  const { tip, torn, broken } = await readTail(handle, start.tip, (line) => {
    replay.take(line)
  })
  if (broken !== undefined) {
    const { path, folder } = where
    throw new ServiceError(reason('history.broken', { path, n: tip.n, begins: broken.begins, folder }))
  }
  const { savedAt, changedOutside } = start
  // What was done after the line that a changed document was written at can't be done to what it is now.
  if (changedOutside && tip.n !== savedAt) {
    throw new ServiceError(
      reason('job-file.changed-outside', { path: where.document, n: savedAt, folder: where.folder }),
    )
  }
  return {
    ...replay.done(),
    tip,
    savedAt,
    size: tip.end + (torn?.bytes ?? 0),
    ...(torn === undefined ? {} : { torn }),
    ...(changedOutside === undefined ? {} : { changedOutside }),
  }
}

/** From the line that the document names; undefined where it names none, or a beginning was made of it as it is. */
async function fromPlace(
  handle: Pick<HistoryHandle, 'read'>,
  document: ReadDocument,
  where: Where,
): Promise<Start | undefined> {
  const { job, place } = takePlace(document.job)
  if (place === undefined) return undefined
  const asWritten = isAsWritten(document.bytes, place.sum)
  if (!asWritten && (await beginningFrom(handle, document)) !== undefined) return undefined
  const there = await lineAt(handle, place.at)
  const found =
    there?.tip.hash === place.hash
      ? there
      : await findLine(handle, (line, hash) => line.n === place.line && hash === place.hash)
  if (found === undefined) return refuseHistory(handle, job, place.line, where)
  const { line, tip } = found
  const refs = isBegin(line) ? NO_REFS : refsAfter(line, [tip.n, tip.at])
  return { job, tip, savedAt: tip.n, refs, ...(asWritten ? {} : { changedOutside: true }) }
}

/** Says why a history is not that of the job. */
async function refuseHistory(
  handle: Pick<HistoryHandle, 'read'>,
  job: Job,
  n: number,
  { path, folder }: Where,
): Promise<never> {
  let other = false
  let ends = -1
  let there = false
  await findLine(handle, (line) => {
    if (isBegin(line) && line.job !== job.id) other = true
    if (line.n === n) there = true
    ends = Math.max(ends, line.n)
    return false
  })
  if (other) throw new ServiceError(reason('history.of-another-job', { path, folder }))
  if (there) throw new ServiceError(reason('history.goes-another-way', { path, n, folder }))
  throw new ServiceError(reason('history.ends-early', { path, n, ends: Math.max(0, ends), folder }))
}

/** The beginning that was made of just this document, before a new one could be written. */
function beginningFrom(
  handle: Pick<HistoryHandle, 'read'>,
  { bytes }: ReadDocument,
): Promise<FoundLine | undefined> {
  const hash = sha256(bytes)
  return findLine(handle, (line) => isBegin(line) && line.from === hash)
}

async function fromBeginning(
  handle: Pick<HistoryHandle, 'read'>,
  document: ReadDocument,
  where: Where,
): Promise<Start> {
  const found = await beginningFrom(handle, document)
  if (found !== undefined) {
    const replay = new Replay(where)
    replay.take(found)
    return { ...replay.done(), tip: found.tip, savedAt: -1 }
  }
  const { document: path, folder } = where
  throw new ServiceError(reason('job-file.without-history', { path, folder }))
}
