import type { Applied, EditOf } from './applied.ts'
import { indexIn } from './apply-list-edit.ts'
import type { Edit } from './edit-types.ts'
import { JobError } from './job-error.ts'
import { replaced } from './list-edits.ts'
import { quoted } from './quoted.ts'
import type { Job, Mark } from './types.ts'

/** Adds one more independent pick to a point. @throws JobError when the mark is not a point */
export function repeatPick(job: Job, edit: EditOf<'repeat-pick'>): Applied {
  const at = indexIn(job.marks, edit.mark, { word: 'mark', key: 'id' })
  const mark = job.marks[at] as Mark
  if (mark.kind !== 'point') {
    throw new JobError(`mark ${quoted(mark.id)} is a ${mark.kind}: only a point can be picked again.`)
  }
  const inverse: Edit =
    mark.repeats === undefined
      ? { do: 'change-mark', id: mark.id, clear: ['repeats'] }
      : { do: 'change-mark', id: mark.id, set: { repeats: mark.repeats } }
  const repeats = [...(mark.repeats ?? []), edit.pixel]
  return { job: { ...job, marks: replaced(job.marks, at, { ...mark, repeats }) }, inverse }
}
