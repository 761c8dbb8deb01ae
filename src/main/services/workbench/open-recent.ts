import type { BenchState } from '../../../contract/bench-state.ts'
import { exists } from '../files/exists.ts'
import { jobFile } from '../job-layout/job-layout.ts'
import { findMoved } from '../known-jobs/find-moved.ts'
import { placeInWords } from '../known-jobs/place-in-words.ts'
import type { RecentJobs } from '../known-jobs/recent-jobs.ts'
import { ServiceError } from '../service-error.ts'
import { inWords, reason } from '../words/services-words.ts'
import type { CurrentJob } from './current-job.ts'

/**
 * Opens a job that a window was told of. One that is not where it was is looked for by its id, and where it is found, that
 * is said; where it is not, it stays on the list, to be shown where it is.
 * @param home the folder below which it is looked for
 * @throws ServiceError when it is gone, or as `CurrentJob.open`
 */
export async function openRecent(
  current: CurrentJob,
  recent: RecentJobs,
  home: string,
  id: string,
): Promise<BenchState> {
  const folder = recent.folderOf(id)
  if (folder === undefined) throw new ServiceError(reason('recent.not-listed'))
  if (await exists(jobFile(folder))) return current.open(folder)
  const job = await recent.find(id)
  if (job === undefined)
    throw new ServiceError(reason('recent.no-job-there', { place: placeInWords(folder) }))
  const { title, job: jobId } = job
  const found = jobId === undefined ? undefined : await findMoved(jobId, folder, home)
  const place = placeInWords(folder)
  if (found === undefined) throw new ServiceError(reason('recent.gone', { title, place }))
  const moved = inWords(reason('recent.moved', { title, place, found: placeInWords(found) }))
  return current.open(found, [moved])
}
