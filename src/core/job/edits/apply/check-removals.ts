import { problemOfUse } from '../../checks/uses.ts'
import { indexOf } from '../../lookup/index-of.ts'
import type { Edit } from '../../model/edit-schema.ts'
import type { Job } from '../../model/types.ts'
import { JobError } from '../../text/job-error.ts'
import { itemEditOf } from './item-edit.ts'

/**
 * Refuses an edit that removed something which the job after it still refers to. A job that lists nobody takes any name
 * for a person.
 *
 * @throws JobError that names both
 */
export function checkRemovals(before: Job, edit: Edit, after: Job): void {
  if (edit.do === 'several') {
    for (const one of edit.edits) checkRemovals(before, one, after)
    return
  }
  const removal = itemEditOf(edit)
  if (removal === null || removal.does.verb !== 'remove') return
  const { kind, does } = removal
  if (kind === 'person' && after.people.length === 0) return
  if (indexOf(after, kind).get(does.name) !== undefined) return
  const problem = problemOfUse(after, kind, does.name, before)
  if (problem !== null) throw new JobError(problem)
}
