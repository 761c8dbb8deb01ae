import type { BenchState } from '../../../contract/bench-state.ts'
import type { RequestRead } from '../../../contract/requests.ts'
import { createJob } from '../job-folder/create-job.ts'
import { describeNewJob } from '../job-folder/describe-new-job.ts'
import type { Limits } from '../limits/kept-limits.ts'
import { doubleRemarks, scanRemarks } from '../scans/intake/scan-remarks.ts'
import type { CurrentJob } from './current-job.ts'
import { dropJobFolder, newJobFolder } from './new-job-folder.ts'
import type { Passwords } from './passwords.ts'
import type { Uploads } from './uploads.ts'

export interface BeginJob {
  current: CurrentJob
  uploads: Uploads
  passwords: Passwords
  limits: Limits
  /** Folder where jobs are made. */
  shelf: string
  now: Date
}

/**
 * Makes a job of scans that were handed over, and opens it.
 * @throws ServiceError when it can't be made; no folder is left then, and the scans wait to be asked for again
 */
export async function beginJob(
  { current, uploads, passwords, limits, shelf, now }: BeginJob,
  { title, unit, by, uploads: wanted }: RequestRead['new-job'],
): Promise<BenchState> {
  const once = [...new Map(wanted.map((one) => [one.upload, one])).values()]
  const given = once.map(({ upload, pages, password }) => uploads.wanted(upload, pages, password))
  const folder = await newJobFolder(shelf, title)
  const remarks: string[] = []
  try {
    const describe: Parameters<typeof createJob>[2] = (added, doubles) => {
      for (const { scan, password } of added) passwords.keep(scan.sha256, password)
      remarks.push(...added.flatMap(scanRemarks), ...doubleRemarks(doubles))
      return describeNewJob(folder, added, { title, unit, by, at: now.toISOString() })
    }
    await createJob(folder, given, describe, limits)
  } catch (error) {
    await dropJobFolder(folder)
    throw error
  }
  for (const { upload } of once) await uploads.remove(upload)
  return current.open(folder, remarks)
}
