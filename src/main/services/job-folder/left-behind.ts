import type { Job } from '../../../core/job/model/types.ts'
import type { LeftPart } from '../words/reason-types.ts'
import type { ServiceReason } from '../words/services-words.ts'
import { lastEdit } from './history/last-edit.ts'
import type { WholeHistory } from './history/read-whole.ts'
import type { Rescue } from './history/rescues.ts'

/** The job as job.json has it, and the last edit that is in it. */
export interface DocumentSide {
  job: Job
  n: number
}

export type OrProblem<T> = T | { problem: ServiceReason }

/** The known edits after one, of whichever history knows most of them; null: there are none. */
function leftAfter(n: number, histories: readonly WholeHistory[]): LeftPart | null {
  let most: LeftPart | null = null
  for (const { job, makers } of histories) {
    const after = makers.filter((made) => made.n > n)
    if (after.length <= (most?.count ?? 0)) continue
    const named = after.map(({ by }) => lastEdit(job, { by, at: '' }).by ?? by)
    most = { count: after.length, by: [...new Set(named)] }
  }
  return most
}

/** What going on from job.json leaves behind. */
export function leftByJob(
  { job, n }: DocumentSide,
  whole: OrProblem<WholeHistory>,
  rescues: readonly Rescue[],
): LeftPart | null {
  const ours = !('problem' in whole) && (job.id === undefined || job.id === whole.of)
  return leftAfter(n, ours ? [whole, ...rescues] : rescues)
}

/** What going on from the history leaves behind. */
export function leftByHistory(
  job: OrProblem<DocumentSide>,
  whole: WholeHistory,
  rescues: readonly Rescue[],
): LeftPart | null {
  const { n } = whole.tip
  const known = leftAfter(n, rescues)
  if (known !== null || 'problem' in job || job.n <= n || job.job.id !== whole.of) return known
  // Of these there is no more than what they made of the document.
  return { count: job.n - n, by: [] }
}
