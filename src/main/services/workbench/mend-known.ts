import type { BenchState } from '../../../contract/bench-state.ts'
import type { Damage } from '../../../contract/jobs.ts'
import type { AnyReason } from '../../../core/words/reason.ts'
import { lastEdit } from '../job-folder/history/last-edit.ts'
import type { Rescue } from '../job-folder/history/rescues.ts'
import { lookAtFolder, mendJob, offersOf, type Side } from '../job-folder/mend-job.ts'
import { placeInWords } from '../known-jobs/place-in-words.ts'
import type { RecentJobs } from '../known-jobs/recent-jobs.ts'
import { ServiceError } from '../service-error.ts'
import { inWords, reason } from '../words/services-words.ts'
import type { CurrentJob } from './current-job.ts'
import { sentenceOf } from './refuse.ts'

function folderOf(recent: RecentJobs, id: string): string {
  const folder = recent.folderOf(id)
  if (folder === undefined) throw new ServiceError(reason('recent.not-listed'))
  return folder
}

/** What one of the two files of a job holds; null where it can't be gone on from. */
function sideHolds(file: string, side: Side): AnyReason | null {
  if ('problem' in side) return null
  const { title, dimensions, marks } = side.job
  const counts = { title, dimensions: dimensions.length, marks: marks.length }
  return reason('mend.side', { file, n: side.n, ...counts, leaves: side.leaves })
}

const rescueHolds = ({ path, tip, job, last }: Rescue): AnyReason =>
  reason('mend.rescue', {
    place: placeInWords(path),
    n: tip.n,
    title: job.title,
    dimensions: job.dimensions.length,
    marks: job.marks.length,
    ...lastEdit(job, last),
  })

/** What is wrong with the files of a job, and what it can be gone on from. Changes nothing. @throws ServiceError when no window was told of it */
export async function lookAtDamage(recent: RecentJobs, id: string): Promise<Damage> {
  const look = await lookAtFolder(folderOf(recent, id))
  const { trouble, job, history, rescues } = look
  if (trouble === null) return { trouble: null, offers: [] }
  const holds = (from: string): AnyReason | null => {
    if (from === 'job') return sideHolds('job.json', job)
    if (from === 'history') return sideHolds('history.ndjson', history)
    const rescue = rescues.find(({ name }) => from === 'rescued' || name === from)
    return rescue === undefined ? null : rescueHolds(rescue)
  }
  const offers = offersOf(look).flatMap(({ from }) => {
    const what = holds(from)
    return what === null ? [] : [{ from, holds: sentenceOf(what) }]
  })
  return { trouble: sentenceOf(trouble), offers }
}

/**
 * Lets a job go on from one of its files, or from what was rescued of it, and opens it. What the files were is kept.
 * @param from as `lookAtDamage` offered it
 * @throws ServiceError as `mendJob` and `CurrentJob.open`
 */
export async function mendKnown(
  current: CurrentJob,
  recent: RecentJobs,
  { job: id, from, by }: { job: string; from: string; by: string },
  now: Date,
): Promise<BenchState> {
  const folder = folderOf(recent, id)
  // A job that went read-only while it was open holds its folder still, and would keep itself out.
  if (current.job?.folder === folder) await current.close()
  try {
    const { n, kept, leaves } = await mendJob(folder, from, { by, now })
    return await current.open(folder, [
      inWords(reason('mend.mended', { n, place: placeInWords(kept), leaves })),
    ])
  } catch (error) {
    await current.tellState()
    throw error
  }
}
