import type { ToldEntry, ToldHistory } from '../../../contract/history.ts'
import type { Change } from '../../../core/job/history/change.ts'
import { cameOrWent } from '../../../core/job/history/changes-of.ts'
import type { HistoryEntry } from '../../../core/job/history/history-of.ts'
import { KnownNames, type ThingNames } from '../../../core/job/history/known-names.ts'
import { sayEntry } from '../../../core/job/history/say-change.ts'
import type { Subject } from '../../../core/job/history/subject.ts'
import { ID_KINDS } from '../../../core/job/ids/id-form.ts'
import { listsOf } from '../../../core/job/ids/labels-of-job.ts'
import { ITEM_KINDS } from '../../../core/job/model/item-kinds.ts'
import type { Job } from '../../../core/job/model/types.ts'
import type { JobSession } from '../job-folder/job-session.ts'
import { historyOfOne } from '../job-folder/told-history.ts'
import { ServiceError } from '../service-error.ts'
import { inWords, reason } from '../words/services-words.ts'
import { asItIsNow } from './as-it-is-now.ts'

function isThere(job: Job, { kind, id }: Subject): boolean {
  const { list, key } = ITEM_KINDS[kind]
  return job[list].some((item: object) => (item as Record<string, unknown>)[key] === id)
}

/** Everything in a job, as if it had been added. */
const allIn = (job: Job): Change[] =>
  ID_KINDS.flatMap((kind) =>
    listsOf(job, kind).flatMap((list) =>
      list.flatMap((item) => cameOrWent({ kind, id: item.id }, item, 'added')),
    ),
  )

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
  session: Pick<JobSession, 'folder' | 'job' | 'writable'>,
  of: Subject,
  limit: number,
): Promise<ToldHistory> {
  const { folder, writable } = session
  if (!isThere(session.job, of)) throw new ServiceError(reason('workbench.no-such-thing', of))
  const { job, subject } = writable ? { job: session.job, subject: of } : await asItIsNow(session, of)
  const names = new KnownNames(job)
  // What went since is still called what it is called where it is shown.
  if (!writable) names.learn(allIn(session.job))
  const entries: ToldEntry[] = []
  for await (const entry of historyOfOne(folder, job, subject, names)) {
    // What came since the job was read names things that are not known yet; the next answer has it.
    if (entry.n !== null && entry.n > (job.edition ?? entry.n)) continue
    if (entries.length === limit) return { entries, more: true }
    entries.push(told(entry, names))
  }
  return { entries, more: false }
}
