import type { ToldEntry, ToldHistory } from '../../../contract/history.ts'
import type { HistoryEntry } from '../../../core/job/history/history-of.ts'
import { KnownNames, type ThingNames } from '../../../core/job/history/known-names.ts'
import { sayEntry } from '../../../core/job/history/say-change.ts'
import type { Subject } from '../../../core/job/history/subject.ts'
import { ITEM_KINDS } from '../../../core/job/model/item-kinds.ts'
import type { Job } from '../../../core/job/model/types.ts'
import type { JobSession } from '../job-folder/job-session.ts'
import { historyOfOne } from '../job-folder/told-history.ts'
import { ServiceError } from '../service-error.ts'
import { inWords, reason } from '../words/services-words.ts'

function isThere(job: Job, { kind, id }: Subject): boolean {
  const { list, key } = ITEM_KINDS[kind]
  return job[list].some((item: object) => (item as Record<string, unknown>)[key] === id)
}

function told(entry: HistoryEntry, names: ThingNames): ToldEntry {
  const { n, at, by } = entry
  return {
    n,
    ...(at === undefined ? {} : { at }),
    ...(by === undefined ? {} : { who: names.nameOf({ kind: 'person', id: by }) }),
    did: sayEntry(entry, names).map(inWords),
  }
}

/**
 * What was done to one thing of a job that is open, the newest first.
 * @throws ServiceError when the job has no such thing, or its history can't be read
 */
export async function tellHistory(
  { folder, job }: Pick<JobSession, 'folder' | 'job'>,
  of: Subject,
  limit: number,
): Promise<ToldHistory> {
  if (!isThere(job, of)) throw new ServiceError(reason('workbench.no-such-thing', of))
  const names = new KnownNames(job)
  const entries: ToldEntry[] = []
  for await (const entry of historyOfOne(folder, job, of, names)) {
    if (entries.length === limit) return { entries, more: true }
    entries.push(told(entry, names))
  }
  return { entries, more: false }
}
