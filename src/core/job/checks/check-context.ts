import { type CoreReason, reason } from '../../words/core-words.ts'
import type { ItemOf } from '../model/item-kinds.ts'
import type { ItemKind } from '../model/meaning.ts'
import type { Job } from '../model/types.ts'
import { JobError } from '../text/job-error.ts'
import { whereIn } from '../text/whereabouts.ts'

/** What every check of a job needs at hand. */
export interface CheckContext {
  readonly job: Job
  /** The items of each kind under their ids, dimensions under their names. */
  readonly items: { readonly [K in ItemKind]: ReadonlyMap<string, ItemOf<K>> }
  /** Whether an item was found sound before by itself, whatever it refers to. */
  readonly known: (item: object) => boolean
}

/** Refuses the job: the place in it, then what is wrong there. */
export function refuse(job: Job, path: readonly PropertyKey[], problem: CoreReason): never {
  throw new JobError(reason('job.unsound', { ...whereIn(job, path), problem }))
}
