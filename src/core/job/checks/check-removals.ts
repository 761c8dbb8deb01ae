import type { Edit, ItemKind } from '../edits/edit-types.ts'
import { ITEM_KINDS } from '../model/item-kinds.ts'
import type { Job } from '../model/types.ts'
import { JobError } from '../text/job-error.ts'
import { problemOfUse } from './uses.ts'

/**
 * Refuses an edit that removed something which the job after it still refers to.
 *
 * @throws JobError that names both
 */
export function checkRemovals(after: Job, edit: Edit): void {
  if (edit.do === 'several') {
    for (const one of edit.edits) checkRemovals(after, one)
    return
  }
  if (!edit.do.startsWith('remove-') || edit.do === 'remove-evidence' || edit.do === 'remove-reference')
    return
  // A job that lists nobody takes any name for a person.
  if (edit.do === 'remove-person' && after.people.length === 0) return
  const kind = edit.do.slice('remove-'.length) as ItemKind
  const { list, key } = ITEM_KINDS[kind]
  const name = (edit as unknown as Record<string, string>)[key] ?? ''
  if ((after[list] as object[]).some((item) => (item as Record<string, unknown>)[key] === name)) return
  const problem = problemOfUse(after, kind, name)
  if (problem !== null) throw new JobError(problem)
}
