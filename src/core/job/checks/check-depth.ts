import { reason } from '../../words/core-words.ts'
import { ITEM_KINDS, ITEM_WORDS } from '../model/item-kinds.ts'
import { DEEPEST_ITEM, nestedAtMost } from '../text/plain-json.ts'
import { type CheckContext, refuse } from './check-context.ts'

const LISTS: ReadonlySet<string> = new Set(ITEM_WORDS.map((word) => ITEM_KINDS[word].list))

/** Checks that each thing is nested no deeper than can be kept in a file. */
export function checkDepth({ job, known }: CheckContext): void {
  const check = (path: readonly PropertyKey[], value: unknown): void => {
    if (!nestedAtMost(value, DEEPEST_ITEM))
      refuse(job, path, reason('job.nested-too-deep', { most: DEEPEST_ITEM }))
  }
  for (const [key, value] of Object.entries(job)) {
    if (!LISTS.has(key)) check([key], value)
    else if (Array.isArray(value)) {
      value.forEach((item: object, i) => {
        if (!known(item)) check([key, i], item)
      })
    }
  }
}
