import { randomUUID } from 'node:crypto'
import type { Job } from '../../../../core/job/model/types.ts'
import type { BeginLine, Tip } from './kept-line.ts'
import { writeLine } from './line-text.ts'

/** Who begins a history, when, and the SHA-256 of the job.json that it is taken from. */
export interface Beginning extends Pick<BeginLine, 'at' | 'by' | 'from'> {
  /** The line that it follows, where a history is begun anew. */
  after?: Tip
}

/** The line that a history begins with, the job with an id of its own, and where the line stands. */
export function beginHistory(
  given: Job,
  { at, by, from, after }: Beginning,
): { text: string; job: Job; tip: Tip } {
  const edition = given.edition ?? 0
  const n = after === undefined ? edition : Math.max(after.n, edition) + 1
  const id = given.id ?? randomUUID()
  const job: Job = { ...given, id, edition: n }
  const begin: BeginLine = { n, at, by, job: id, begin: job, from, previous: after?.hash ?? null }
  const { text, hash } = writeLine(begin)
  const start = after?.end ?? 0
  return { text, job, tip: { n, hash, at: start, end: start + Buffer.byteLength(text) } }
}
