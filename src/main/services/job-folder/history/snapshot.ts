import type { Job } from '../../../../core/job/model/types.ts'
import { writeJob } from '../../../../core/job/write-job.ts'
import type { Tip } from './kept-line.ts'
import { sha256 } from './line-text.ts'

/** Which line of the history a job.json was written at. */
export interface SnapshotPlace {
  line: number
  hash: string
  /** The byte of history.ndjson that the line begins at. */
  at: number
}

const OPENS = ',\n  "history": '
const ENDS = '\n}\n'

/**
 * The text of a job.json that names the line it was written at, and holds the SHA-256 of all that stands before: so
 * that a change by hand is seen.
 */
export function snapshotText(job: Job, { n, hash, at }: Pick<Tip, 'n' | 'hash' | 'at'>): string {
  const body = writeJob(job).slice(0, -ENDS.length)
  const sum = sha256(body)
  return `${body}${OPENS}{ "line": ${n}, "hash": "${hash}", "at": ${at}, "sum": "${sum}" }${ENDS}`
}

/** Whether the bytes of a job.json are those that were written with a sum. */
export function isAsWritten(bytes: Buffer, sum: string): boolean {
  const end = bytes.lastIndexOf(OPENS)
  return end > 0 && sha256(bytes.subarray(0, end)) === sum
}

/** The job in a document as a session holds it, and where it was written. */
export function takePlace({ history, ...job }: Job): { job: Job; place: Job['history'] } {
  return { job, place: history }
}
