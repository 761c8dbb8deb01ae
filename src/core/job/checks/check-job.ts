import { ITEM_KINDS, ITEM_WORDS } from '../model/item-kinds.ts'
import type { Job } from '../model/types.ts'
import { JobError } from '../text/job-error.ts'
import type { CheckContext } from './check-context.ts'
import { checkDepth } from './check-depth.ts'
import { checkDimensions } from './check-dimensions.ts'
import { checkFormulas } from './check-formulas.ts'
import { checkMarks } from './check-marks.ts'
import { checkNames, itemsOf } from './check-names.ts'
import { checkQuantities } from './check-quantities.ts'
import { checkReferences } from './check-references.ts'
import { checkViews } from './check-views.ts'
import { sameFormulas } from './same-formulas.ts'

/** Tells which items of a job were in a sound job before, unchanged and under the same unit and gauge. */
function knownFrom(job: Job, before: Job | undefined): (item: object) => boolean {
  if (before === undefined || before.unit !== job.unit || before.gauge !== job.gauge) return () => false
  const items = new Set<object>()
  for (const word of ITEM_WORDS) for (const item of before[ITEM_KINDS[word].list]) items.add(item)
  for (const { references } of before.views) for (const reference of references) items.add(reference)
  return (item) => items.has(item)
}

/**
 * Checks all that a schema can't: that ids are unique, that everything referred to exists and suits, that written
 * quantities can be read, that formulas hold together.
 *
 * @param before a sound job that this one was made from; what they share is not read again
 * @throws JobError with the first problem and where it is
 */
export function checkJob(job: Job, before?: Job): void {
  const context: CheckContext = { job, items: itemsOf(job), known: knownFrom(job, before) }
  checkNames(context)
  checkDepth(context)
  checkReferences(context)
  checkMarks(context)
  checkViews(context)
  checkDimensions(context)
  checkQuantities(context)
  if (before !== undefined && sameFormulas(before, job)) return
  const problem = checkFormulas(job)
  if (problem !== null) throw new JobError(problem)
}
