import type { BenchState } from '../../../contract/bench-state.ts'
import type { CurrentJob } from './current-job.ts'

/**
 * Has a job on the bench that can only be looked at read anew, opened for writing where that can be, and tells every
 * window.
 * @param job its id
 * @throws ServiceError when another job is open, or its files do not belong together: what was shown stays then
 */
export async function lookAgain(current: CurrentJob, job: string): Promise<BenchState> {
  const bench = current.mustBeOpen(job)
  try {
    await bench.lookAgain()
  } catch (error) {
    await current.tellState()
    throw error
  }
  return current.tellState()
}
