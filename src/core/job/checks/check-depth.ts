import { reason } from '../../words/core-words.ts'
import { isList } from '../model/item-kinds.ts'
import { DEEPEST_ITEM, nestedAtMost } from '../text/plain-json.ts'
import { type CheckContext, refuse } from './check-context.ts'

/** Checks that each thing is nested no deeper than can be kept in a file. */
export function checkDepth({ job }: CheckContext): void {
  const check = (path: readonly PropertyKey[], value: unknown): void => {
    if (!nestedAtMost(value, DEEPEST_ITEM))
      refuse(job, path, reason('job.nested-too-deep', { most: DEEPEST_ITEM }))
  }
  for (const [key, value] of Object.entries(job)) {
    if (!isList(key)) check([key], value)
    else if (Array.isArray(value)) {
      value.forEach((item, i) => {
        check([key, i], item)
      })
    }
  }
}
