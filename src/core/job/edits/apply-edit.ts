import { checkUnitChange } from '../checks/bare-quantities.ts'
import { checkJob } from '../checks/check-job.ts'
import { checkRemovals } from '../checks/check-removals.ts'
import type { Job } from '../model/types.ts'
import type { Applied, EditOf } from './applied.ts'
import { type FieldChange, fieldChange } from './change-fields.ts'
import { addDimension, adopt, moveDimension, removeDimension, rename } from './edit-dimension.ts'
import { editEvidence, withdraw } from './edit-evidence.ts'
import { editHead } from './edit-head.ts'
import { editItem } from './edit-item.ts'
import { editReference } from './edit-reference.ts'
import type { Edit, ItemKind } from './edit-types.ts'
import { readEdit } from './read-edit.ts'
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

function plainItem(
  job: Job,
  edit: Extract<Edit, { do: `${'add' | 'change' | 'remove'}-${ItemKind}` }>,
): Applied {
  const [verb, kind] = edit.do.split('-') as ['add' | 'change' | 'remove', ItemKind]
  if ('item' in edit) return editItem(job, kind, { verb: 'add', item: edit.item, index: edit.index })
  const name = 'name' in edit ? edit.name : edit.id
  if (verb === 'remove') return editItem(job, kind, { verb: 'remove', name })
  return editItem(job, kind, { verb: 'change', name, ...fieldChange(edit as FieldChange) })
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
    default:
      return plainItem(job, edit)
  }
}

/**
 * A job after an edit, sharing with the job before all that the edit did not touch, and the edit that takes it back.
 * The inverse of the inverse makes the edit again.
 *
 * @param job a sound job, as `readJob` and this function return it
 * @throws JobError when the edit has the wrong form, names what is not there, or would leave a job that is not
 *   sound; nothing is changed then
 */
export function applyEdit(job: Job, edit: Edit): Applied {
  const sound = readEdit(edit)
  const applied = step(job, sound)
  checkRemovals(applied.job, sound)
  checkUnitChange(applied.job, job.unit)
  checkJob(applied.job, job)
  return applied
}
