import { type CoreReason, reason } from '../../words/core-words.ts'
import type { ItemOf } from '../model/item-kinds.ts'
import type { ItemKind } from '../model/meaning.ts'
import type { Job } from '../model/types.ts'
import { JobError } from '../text/job-error.ts'
import { whereIn } from '../text/whereabouts.ts'

/** Items under what they go by. */
interface Named<T> {
  readonly size: number
  has(name: string): boolean
  get(name: string): T | undefined
}

/** The items of a job of each kind under their ids, dimensions under their names. */
export type NamedItems = { readonly [K in ItemKind]: Named<ItemOf<K>> }

/** What every check needs at hand. */
export interface CheckContext {
  /** What is checked: a job, or an excerpt of one. */
  readonly job: Job
  /** All items of the job, also those that are not in the excerpt. */
  readonly items: NamedItems
  /** It was kept by an older program, which took what nobody may write any more: that is told where it matters. */
  readonly kept?: boolean
}

/** Refuses what is checked: the place in it, then what is wrong there. */
export function refuse(job: Job, path: readonly PropertyKey[], problem: CoreReason): never {
  throw new JobError(reason('job.unsound', { ...whereIn(job, path), problem }))
}
