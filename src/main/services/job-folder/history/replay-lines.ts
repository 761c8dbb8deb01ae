import { applyEdit, readEdit } from '../../../../core/job/edits/edit.ts'
import type { Job } from '../../../../core/job/model/types.ts'
import { readJob } from '../../../../core/job/read-job.ts'
import { ScantlingError } from '../../../../core/words/scantling-error.ts'
import { ServiceError } from '../../service-error.ts'
import { reason } from '../../words/services-words.ts'
import { isBegin } from './kept-line.ts'
import type { PlacedLine } from './read-tail.ts'
import { refsAfter, type StackRefs } from './undo-stacks.ts'

/** A job as some lines of its history leave it. */
export interface Replayed {
  job: Job
  refs: StackRefs
}

export const NO_REFS: StackRefs = { undo: null, redo: null }

/**
 * The job after one line more.
 * @param before undefined: a beginning must come first
 * @throws ServiceError when the line can't be applied
 */
export function replayLine(
  before: Replayed | undefined,
  { line, tip: { n, at } }: PlacedLine,
  { path, folder }: { path: string; folder: string },
): Replayed {
  try {
    if (isBegin(line)) return { job: { ...readJob(line.begin), edition: n }, refs: NO_REFS }
    if (before === undefined) throw new ServiceError(reason('history.no-beginning', { path, folder }))
    const { job } = applyEdit(before.job, readEdit(line.edit))
    return { job: { ...job, edition: n }, refs: refsAfter(line, [n, at]) }
  } catch (error) {
    if (!(error instanceof ScantlingError) || error instanceof ServiceError) throw error
    throw new ServiceError(reason('history.edit-not-applied', { path, n, problem: error.reason, folder }))
  }
}
