import type { BenchState } from '../../../contract/bench-state.ts'
import type { CurrentJob } from './current-job.ts'

/**
 * Has the job on the bench opened for writing, its lock taken over, and tells every window.
 * @param job its id
 * @throws ServiceError when another job is open, or as `JobOnBench.takeOver`
 */
export async function takeOver(current: CurrentJob, job: string, lock: string): Promise<BenchState> {
  const bench = current.mustBeOpen(job)
  try {
    await bench.takeOver(lock)
  } catch (error) {
    await current.tellState()
    throw error
  }
  return current.tellState()
}
