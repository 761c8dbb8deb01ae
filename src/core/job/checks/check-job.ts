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

/** Checks all that a schema can't of things that have names of their own, but for their formulas. */
export function checkThings(context: CheckContext): void {
  checkNames(context)
  checkDepth(context)
  checkReferences(context)
  checkMarks(context)
  checkViews(context)
  checkDimensions(context)
  checkQuantities(context)
}

/**
 * Checks all that a schema can't: that ids are unique, that everything referred to exists and suits, that written
 * quantities can be read, that formulas hold together.
 *
 * @param kept whether an older program may have written it
 * @throws JobError with the first problem and where it is
 */
export function checkJob(job: Job, kept = false): void {
  const context: CheckContext = { job, items: itemsOf(job), kept }
  checkThings(context)
  const problem = checkFormulas(context)
  if (problem !== null) throw new JobError(problem)
}
