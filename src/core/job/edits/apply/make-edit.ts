import type { Edit } from '../../model/edit-schema.ts'
import type { EditOf } from './applied.ts'
import { fieldChange } from './change-fields.ts'
import { dismissFigure, recallFigure } from './dismiss-figure.ts'
import { addDimension, adopt, moveDimension, removeDimension, rename } from './edit-dimension.ts'
import { editEvidence, reinstate, withdraw } from './edit-evidence.ts'
import { editHead } from './edit-head.ts'
import { editItem } from './edit-item.ts'
import { editReference } from './edit-reference.ts'
import { itemEditOf } from './item-edit.ts'
import { moveSheet } from './move-sheet.ts'
import { repeatPick } from './repeat-pick.ts'
import type { WorkingCopy } from './working-copy.ts'

function several(copy: WorkingCopy, edit: EditOf<'several'>): Edit {
  const back = edit.edits.map((one) => makeEdit(copy, one))
  return { do: 'several', name: edit.name, edits: back.reverse() }
}

/**
 * Makes an edit in a working copy, without asking whether the job is sound after it: several may only be so together.
 *
 * @returns the edit that takes it back
 * @throws JobError when the edit names what is not there, or sets fields to what they can't be; the copy is of no more
 *   use then
 */
export function makeEdit(copy: WorkingCopy, edit: Edit): Edit {
  switch (edit.do) {
    case 'describe':
      return editHead(copy, edit)
    case 'several':
      return several(copy, edit)
    case 'add-dimension':
      return addDimension(copy, edit)
    case 'remove-dimension':
      return removeDimension(copy, edit)
    case 'rename-dimension':
      return rename(copy, edit)
    case 'move-dimension':
      return moveDimension(copy, edit)
    case 'move-sheet':
      return moveSheet(copy, edit)
    case 'adopt':
      return adopt(copy, edit)
    case 'repeat-pick':
      return repeatPick(copy, edit)
    case 'withdraw-evidence':
      return withdraw(copy, edit)
    case 'reinstate-evidence':
      return reinstate(copy, edit)
    case 'add-evidence':
      return editEvidence(copy, edit.dimension, { verb: 'add', item: edit.item, index: edit.index })
    case 'change-evidence':
      return editEvidence(copy, edit.dimension, { verb: 'change', name: edit.id, ...fieldChange(edit) })
    case 'remove-evidence':
      return editEvidence(copy, edit.dimension, { verb: 'remove', name: edit.id })
    case 'add-reference':
      return editReference(copy, edit.view, { verb: 'add', item: edit.item, index: edit.index })
    case 'dismiss-figure':
      return dismissFigure(copy, edit)
    case 'recall-figure':
      return recallFigure(copy, edit)
    case 'change-reference':
      return editReference(copy, edit.view, { verb: 'change', name: edit.id, ...fieldChange(edit) })
    case 'remove-reference':
      return editReference(copy, edit.view, { verb: 'remove', name: edit.id })
    default: {
      const itemEdit = itemEditOf(edit)
      if (itemEdit === null) throw new RangeError(`Nothing is known of the edit ${edit.do}.`)
      return editItem(copy, itemEdit)
    }
  }
}
