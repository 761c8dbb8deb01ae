import type { Dimension, Instrument, Job, Mark, Person, Sheet, View } from '../model/types.ts'
import { JobError } from '../text/job-error.ts'
import { place } from '../text/place.ts'

/** What every check of a job needs at hand. */
export interface CheckContext {
  readonly job: Job
  readonly people: ReadonlyMap<string, Person>
  readonly instruments: ReadonlyMap<string, Instrument>
  readonly sheets: ReadonlyMap<string, Sheet>
  readonly views: ReadonlyMap<string, View>
  readonly marks: ReadonlyMap<string, Mark>
  readonly dimensions: ReadonlyMap<string, Dimension>
  /** Whether an item was found sound before by itself, whatever it refers to. */
  readonly known: (item: object) => boolean
}

/** Refuses the job: the place in it, then what is wrong there. */
export function refuse(job: Job, path: readonly PropertyKey[], problem: string): never {
  const where = place(job, path)
  throw new JobError(`${where === '' ? 'The job' : where} ${problem}.`)
}
