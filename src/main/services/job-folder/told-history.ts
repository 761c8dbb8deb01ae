import { changesOf } from '../../../core/job/history/changes-of.ts'
import { follow } from '../../../core/job/history/follow.ts'
import { entriesBefore, entryOf, type HistoryEntry } from '../../../core/job/history/history-of.ts'
import type { KnownNames } from '../../../core/job/history/known-names.ts'
import { FormerSubject, type Subject } from '../../../core/job/history/subject.ts'
import type { Job } from '../../../core/job/model/types.ts'
import { type Began, historyBack } from './history-back.ts'

const EVERYTHING = { take: changesOf }

/**
 * All that was done in a job, newest first, back to where its history began.
 * @param names learns what those are called that are gone
 * @throws ServiceError as historyBack
 */
export async function* wholeHistory(folder: string, names: KnownNames): AsyncGenerator<HistoryEntry | Began> {
  for await (const line of historyBack(folder)) {
    if ('began' in line) {
      yield line
      continue
    }
    const entry = entryOf(line, EVERYTHING, names)
    if (entry === null) continue
    yield entry
  }
}

/**
 * The history of one thing, newest first; at its end what the job said of it as its history began.
 * @param job as it stands after the newest line
 * @param names learns what those are called that are gone
 * @throws ServiceError as historyBack
 */
export async function* historyOfOne(
  folder: string,
  job: Job,
  subject: Subject,
  names: KnownNames,
): AsyncGenerator<HistoryEntry> {
  const follower = follow(subject, job)
  let began: Job | undefined
  for await (const line of historyBack(folder, () => follower.pieces)) {
    if ('began' in line) {
      began = line.began
      continue
    }
    const entry = entryOf(line, follower, names)
    if (entry === null) continue
    yield entry
  }
  if (began !== undefined) yield* entriesBefore(began, follower)
}

/** What once went by a text, by the history of a job; null: nothing did. @throws ServiceError as historyBack */
export async function formerSubject(
  folder: string,
  job: Job,
  called: string,
  names: KnownNames,
): Promise<Subject | null> {
  const former = new FormerSubject(job, called, names)
  for await (const line of historyBack(folder, () => former.pieces)) {
    if ('began' in line) continue
    names.learn(changesOf(line))
    const found = former.take(line)
    if (found !== null) return found
  }
  return null
}
