import type { BenchState } from '../../../contract/bench-state.ts'
import { exists } from '../files/exists.ts'
import { jobFile } from '../job-layout/job-layout.ts'
import { placeInWords } from '../known-jobs/place-in-words.ts'
import type { RecentJobs } from '../known-jobs/recent-jobs.ts'
import { ServiceError } from '../service-error.ts'
import { reason } from '../words/services-words.ts'
import type { CurrentJob } from './current-job.ts'

/**
 * Opens a job that was open before; one that is gone is taken off the list.
 * @throws ServiceError when it is gone, or as `CurrentJob.open`
 */
export async function openRecent(current: CurrentJob, recent: RecentJobs, id: string): Promise<BenchState> {
  const job = await recent.find(id)
  if (job === undefined) throw new ServiceError(reason('recent.not-listed'))
  if (await exists(jobFile(job.folder))) return current.open(job.folder)
  await current.forget(job)
  throw new ServiceError(reason('recent.gone', { title: job.title, place: placeInWords(job.folder) }))
}
