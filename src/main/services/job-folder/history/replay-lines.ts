import { EditRun, readEdit } from '../../../../core/job/edits/edit.ts'
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

/** Makes a job of the lines of its history, one after the other. */
export class Replay {
  readonly #where: { path: string; folder: string }
  #run: EditRun | undefined
  /** The number of the last line; undefined: no line was read. */
  #n: number | undefined
  #refs: StackRefs

  /** @param before the job before the first line; undefined: a beginning must come first */
  constructor(where: { path: string; folder: string }, before?: Replayed) {
    this.#where = where
    this.#run = before && new EditRun(before.job)
    this.#refs = before?.refs ?? NO_REFS
  }

  /**
   * Makes one line more.
   * @throws ServiceError when it can't be applied; there is no job then
   */
  take({ line, tip: { n, at } }: PlacedLine): void {
    const { path, folder } = this.#where
    try {
      if (isBegin(line)) {
        this.#run = new EditRun(readJob(line.begin))
        this.#refs = NO_REFS
      } else {
        if (this.#run === undefined) throw new ServiceError(reason('history.no-beginning', { path, folder }))
        this.#run.make(readEdit(line.edit))
        this.#refs = refsAfter(line, [n, at])
      }
      this.#n = n
    } catch (error) {
      if (!(error instanceof ScantlingError) || error instanceof ServiceError) throw error
      throw new ServiceError(reason('history.edit-not-applied', { path, n, problem: error.reason, folder }))
    }
  }

  /**
   * The job after the last line.
   * @throws ServiceError when there was no beginning
   */
  done(): Replayed {
    const { path, folder } = this.#where
    if (this.#run === undefined) throw new ServiceError(reason('history.no-beginning', { path, folder }))
    const { job } = this.#run
    return { job: this.#n === undefined ? job : { ...job, edition: this.#n }, refs: this.#refs }
  }
}
