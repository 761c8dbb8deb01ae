import type { AskArguments } from '../../../contract/asks.ts'
import type { BenchState } from '../../../contract/bench-state.ts'
import { createJob } from '../job-folder/create-job.ts'
import { describeNewJob } from '../job-folder/describe-new-job.ts'
import { doubleRemarks, scanRemarks } from '../scans/scan-remarks.ts'
import type { CurrentJob } from './current-job.ts'
import { dropJobFolder, newJobFolder } from './new-job-folder.ts'
import type { Uploads } from './uploads.ts'

/**
 * Makes a job of scans that were handed over, and opens it.
 * @param shelf folder where jobs are made
 * @throws ServiceError when it can't be made; no folder is left then, and the scans wait to be asked for again
 */
export async function beginJob(
  current: CurrentJob,
  uploads: Uploads,
  shelf: string,
  { title, unit, by, uploads: wanted }: AskArguments<'new-job'>,
): Promise<BenchState> {
  const ids = [...new Set(wanted)]
  const given = ids.map((id) => uploads.find(id))
  const folder = await newJobFolder(shelf, title)
  const remarks: string[] = []
  try {
    await createJob(folder, given, (added, doubles) => {
      remarks.push(...added.flatMap(scanRemarks), ...doubleRemarks(doubles))
      return describeNewJob(folder, added, { title, unit, by })
    })
  } catch (error) {
    await dropJobFolder(folder)
    throw error
  }
  for (const id of ids) await uploads.remove(id)
  return current.open(folder, remarks)
}
