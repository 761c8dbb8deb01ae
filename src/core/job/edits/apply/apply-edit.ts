import { checkJob } from '../../checks/check-job.ts'
import type { Edit } from '../../model/edit-schema.ts'
import type { Job } from '../../model/types.ts'
import type { Applied, EditOf } from './applied.ts'
import { checkUnitChange } from './bare-quantities.ts'
import { fieldChange } from './change-fields.ts'
import { checkRemovals } from './check-removals.ts'
import { addDimension, adopt, moveDimension, removeDimension, rename } from './edit-dimension.ts'
import { editEvidence, withdraw } from './edit-evidence.ts'
import { editHead } from './edit-head.ts'
import { editItem } from './edit-item.ts'
import { editReference } from './edit-reference.ts'
import { itemEditOf } from './item-edit.ts'
import { repeatPick } from './repeat-pick.ts'

function several(job: Job, edit: EditOf<'several'>): Applied {
  let next = job
  const back: Edit[] = []
  for (const one of edit.edits) {
    const applied = step(next, one)
    next = applied.job
    back.push(applied.inverse)
  }
  return { job: next, inverse: { do: 'several', name: edit.name, edits: back.reverse() } }
}

/** Applies an edit without asking whether the job is sound after it: several may only be so together. */
function step(job: Job, edit: Edit): Applied {
  switch (edit.do) {
    case 'describe':
      return editHead(job, edit)
    case 'several':
      return several(job, edit)
    case 'add-dimension':
      return addDimension(job, edit)
    case 'remove-dimension':
      return removeDimension(job, edit)
    case 'rename-dimension':
      return rename(job, edit)
    case 'move-dimension':
      return moveDimension(job, edit)
    case 'adopt':
      return adopt(job, edit)
    case 'repeat-pick':
      return repeatPick(job, edit)
    case 'withdraw-evidence':
      return withdraw(job, edit.dimension, edit.id, edit.why)
    case 'reinstate-evidence':
      return withdraw(job, edit.dimension, edit.id, undefined)
    case 'add-evidence':
      return editEvidence(job, edit.dimension, { verb: 'add', item: edit.item, index: edit.index })
    case 'change-evidence':
      return editEvidence(job, edit.dimension, { verb: 'change', name: edit.id, ...fieldChange(edit) })
    case 'remove-evidence':
      return editEvidence(job, edit.dimension, { verb: 'remove', name: edit.id })
    case 'add-reference':
      return editReference(job, edit.view, { verb: 'add', item: edit.item, index: edit.index })
    case 'change-reference':
      return editReference(job, edit.view, { verb: 'change', name: edit.id, ...fieldChange(edit) })
    case 'remove-reference':
      return editReference(job, edit.view, { verb: 'remove', name: edit.id })
    default: {
      const itemEdit = itemEditOf(edit)
      if (itemEdit === null) throw new RangeError(`Nothing is known of the edit ${edit.do}.`)
      return editItem(job, itemEdit)
    }
  }
}

/**
 * A job after an edit, sharing with the job before all that the edit did not touch, and the edit that takes it back.
 * The inverse of the inverse makes the edit again.
 *
 * @param job a sound job, as `readJob` and this function return it
 * @param edit as `readEdit` gives it; the job after it shares what it adds, so it must not be changed any more
 * @throws JobError when the edit names what is not there, sets fields to what they can't be, or would leave a job that
 *   is not sound; nothing is changed then
 */
export function applyEdit(job: Job, edit: Edit): Applied {
  const applied = step(job, edit)
  checkRemovals(applied.job, edit)
  checkUnitChange(applied.job, job.unit)
  checkJob(applied.job, job)
  return applied
}
