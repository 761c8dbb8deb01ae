import type { Job } from '../model/types.ts'
import { JobError } from '../text/job-error.ts'
import type { CheckContext } from './check-context.ts'
import { checkDimensions } from './check-dimensions.ts'
import { checkFormulas } from './check-formulas.ts'
import { checkMarks } from './check-marks.ts'
import { byId, checkNames, dimensionsByName } from './check-names.ts'
import { checkNotes } from './check-notes.ts'
import { checkOwn } from './check-own.ts'
import { checkViews } from './check-views.ts'
import { sameFormulas } from './same-formulas.ts'

/** Tells which items of a job were in a sound job before, unchanged and under the same unit and gauge. */
function knownFrom(job: Job, before: Job | undefined): (item: object) => boolean {
  if (before === undefined || before.unit !== job.unit || before.gauge !== job.gauge) return () => false
  const items = new Set<object>()
  for (const list of [
    before.people,
    before.instruments,
    before.sheets,
    before.views,
    before.marks,
    before.dimensions,
    before.relations,
    before.notes,
  ]) {
    for (const item of list) items.add(item)
  }
  for (const view of before.views) for (const reference of view.references) items.add(reference)
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
  const context: CheckContext = {
    job,
    people: byId(job, 'people', job.people),
    instruments: byId(job, 'instruments', job.instruments),
    sheets: byId(job, 'sheets', job.sheets),
    views: byId(job, 'views', job.views),
    marks: byId(job, 'marks', job.marks),
    dimensions: dimensionsByName(job),
    known: knownFrom(job, before),
  }
  byId(job, 'relations', job.relations)
  byId(job, 'notes', job.notes)
  checkNames(context)
  checkOwn(context)
  checkMarks(context)
  checkViews(context)
  checkNotes(context)
  checkDimensions(context)
  if (before !== undefined && sameFormulas(before, job)) return
  const problem = checkFormulas(job)
  if (problem !== null) throw new JobError(problem)
}
