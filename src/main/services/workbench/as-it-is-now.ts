import type { Change } from '../../../core/job/history/change.ts'
import { changesOf } from '../../../core/job/history/changes-of.ts'
import type { HistoryLine } from '../../../core/job/history/history-line.ts'
import type { Subject } from '../../../core/job/history/subject.ts'
import type { Job } from '../../../core/job/model/types.ts'
import { historyBack } from '../job-folder/history-back.ts'
import type { JobSession } from '../job-folder/job-session.ts'
import { readJobFolder } from '../job-folder/read-job-folder.ts'
import { ServiceError } from '../service-error.ts'

/** A job as its folder holds it by now, and what a thing of it is called there. */
export interface AsItIsNow {
  job: Job
  subject: Subject
}

type Known = Pick<Change, 'verb' | 'fields' | 'thing'> & Pick<HistoryLine, 'n' | 'undoes' | 'redoes'>

/**
 * What became of a job that is looked at while somebody else edits it. Where its files do not belong together any more,
 * it is as it was read.
 */
export async function asItIsNow(
  { folder, job }: Pick<JobSession, 'folder' | 'job'>,
  subject: Subject,
): Promise<AsItIsNow> {
  try {
    const { job: now } = await readJobFolder(folder)
    if (now.edition === job.edition) return { job: now, subject }
    return { job: now, subject: await followed(folder, subject, job.edition ?? 0, now.edition ?? 0) }
  } catch (error) {
    if (error instanceof ServiceError) return { job, subject }
    throw error
  }
}

/** A thing after the edits that follow one: under another name, or gone. */
async function followed(folder: string, subject: Subject, from: number, to: number): Promise<Subject> {
  const since: Known[] = []
  for await (const line of historyBack(folder)) {
    if (line.n <= from) break
    if ('began' in line || line.n > to) continue
    const { n, undoes, redoes } = line
    for (const change of changesOf(line).toReversed())
      if (change.thing.kind === subject.kind) since.push({ ...change, n, undoes, redoes })
  }
  return since.reverse().reduce(after, subject)
}

function after(subject: Subject, { thing, verb, fields, n, undoes, redoes }: Known): Subject {
  const { kind, id, until } = subject
  const before = fields.find(({ field }) => field === 'name')?.before
  if (verb === 'renamed') return until === undefined && before === id ? { kind, id: thing.id } : subject
  if (thing.id !== id) return subject
  if (verb === 'removed' && until === undefined) return { kind, id, until: n }
  // What an undo or redo brings back is the same thing again.
  const isBack = verb === 'added' && (undoes !== undefined || redoes !== undefined)
  return isBack ? { kind, id } : subject
}
