import { namesInRelation } from '../../formula/relation-text.ts'
import type { Relation } from '../../job/model/types.ts'
import type { Assessment } from '../assessment/assessment.ts'
import { singleOf } from '../assessment/singles.ts'

/** What stands on a dimension. */
export interface StandingOn {
  /** Names of the dimensions that have a formula with it, or with one of those; in the order of the job. */
  readonly dimensions: readonly string[]
  /** The relations that it, or one of those, is part of. */
  readonly relations: readonly Relation[]
}

/** What changes with a dimension: what is worked out from it, and the sums that it stands in. */
export function standingOn(name: string, { job, singles }: Assessment): StandingOn {
  const users = new Map<string, string[]>()
  for (const dimension of job.dimensions) {
    for (const used of singleOf(singles, dimension).uses) {
      const by = users.get(used)
      if (by === undefined) users.set(used, [dimension.name])
      else by.push(dimension.name)
    }
  }
  const reached = new Set([name])
  // A set goes on to what is put into it on the way.
  for (const one of reached) for (const user of users.get(one) ?? []) reached.add(user)
  return {
    dimensions: job.dimensions.flatMap((one) =>
      one.name !== name && reached.has(one.name) ? [one.name] : [],
    ),
    relations: job.relations.filter(({ text }) => namesInRelation(text).some((one) => reached.has(one))),
  }
}
