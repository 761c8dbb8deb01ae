import { checkJob } from '../../checks/check-job.ts'
import { isSeenSound } from '../../checks/seen-sound.ts'
import type { Edit } from '../../model/edit-schema.ts'
import type { Job } from '../../model/types.ts'
import { sayingLabels } from '../../text/saying-labels.ts'
import type { Applied } from './applied.ts'
import { checkUnitChange } from './bare-quantities.ts'
import { checkRemovals } from './check-removals.ts'
import { labelsAround } from './labels-around.ts'
import { makeEdit } from './make-edit.ts'
import { handOnLists, WorkingCopy } from './working-copy.ts'

/**
 * Checks the whole of a job that an edit has made of a sound one.
 *
 * @throws JobError with the first problem
 */
export function checkEdited(before: Job, edit: Edit, after: Job): void {
  checkRemovals(before, edit, after)
  checkUnitChange(before, after)
  checkJob(after)
}

/**
 * A job after an edit, sharing with the job before all that the edit did not touch, and the edit that takes it back.
 * The inverse of the inverse makes the edit again. It takes as long as what the edit touches is much, unless the edit is
 * refused or changes what bare numbers mean: then the whole job is looked through.
 *
 * @param job a sound job, as `readJob` and this function return it
 * @param edit as `readEdit` gives it; the job after it shares what it adds, so it must not be changed any more
 * @throws JobError when the edit names what is not there, sets fields to what they can't be, or would leave a job that
 *   is not sound; nothing is changed then
 */
export function applyEdit(job: Job, edit: Edit): Applied {
  return sayingLabels(labelsAround(job, edit), () => {
    const copy = new WorkingCopy(job)
    const inverse = makeEdit(copy, edit)
    const change = copy.change()
    if (!isSeenSound(change)) checkEdited(job, edit, change.after)
    handOnLists(change)
    return { job: change.after, inverse }
  })
}
