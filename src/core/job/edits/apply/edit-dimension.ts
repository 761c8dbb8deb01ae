import { reason } from '../../../words/core-words.ts'
import type { Edit } from '../../model/edit-schema.ts'
import type { Dimension } from '../../model/types.ts'
import { JobError } from '../../text/job-error.ts'
import type { EditOf } from './applied.ts'
import { insert, placeIn } from './apply-list-edit.ts'
import { editItem } from './edit-item.ts'
import { given } from './given.ts'
import { renameDimension } from './rename-dimension.ts'
import type { WorkingCopy } from './working-copy.ts'

/** Puts one dimension in place of itself. @throws JobError when there is no such dimension */
export function changeDimension(
  { lists }: WorkingCopy,
  name: string,
  change: (dimension: Dimension) => Dimension,
): void {
  const at = placeIn(lists.dimension, name, 'dimension')
  lists.dimension.replace(at, change(lists.dimension.at(at)))
}

/** Adds a dimension; taking it back takes the evidence that came with it too. */
export function addDimension(copy: WorkingCopy, edit: EditOf<'add-dimension'>): Edit {
  const inverse = editItem(copy, {
    kind: 'dimension',
    does: { verb: 'add', item: edit.item, index: edit.index },
  })
  if (edit.item.evidence.length === 0) return inverse
  return { do: 'remove-dimension', name: edit.item.name, undo: true }
}

/** Removes a dimension. @throws JobError when it holds evidence and this is no undo */
export function removeDimension(copy: WorkingCopy, edit: EditOf<'remove-dimension'>): Edit {
  const held = copy.lists.dimension.get(edit.name)?.evidence ?? []
  if (held.length > 0 && edit.undo !== true) {
    throw new JobError(
      reason('edit.holds-evidence', { dimension: edit.name, evidence: held.map(({ id }) => id) }),
    )
  }
  return editItem(copy, { kind: 'dimension', does: { verb: 'remove', name: edit.name } })
}

/** Says which value is adopted, by whom and when, or leaves it to the rules. */
export function adopt(copy: WorkingCopy, edit: EditOf<'adopt'>): Edit {
  let back: Edit = { do: 'adopt', dimension: edit.dimension }
  changeDimension(copy, edit.dimension, (before) => {
    const { adopt, adoptedBy, adoptedAt, ...dimension } = before
    back = { ...back, ...given({ adopt, by: adoptedBy, at: adoptedAt }) }
    return { ...dimension, ...given({ adopt: edit.adopt, adoptedBy: edit.by, adoptedAt: edit.at }) }
  })
  return back
}

/** Renames a dimension wherever it is named. */
export function rename(copy: WorkingCopy, edit: EditOf<'rename-dimension'>): Edit {
  const already = renameDimension(copy, edit.name, edit.to)
  const back: Edit = { do: 'rename-dimension', name: edit.to, to: edit.name }
  if (already.length === 0) return back
  // These notes were about the new name before, so renaming back would take them along.
  const mend = already.map(({ id }): Edit => ({ do: 'change-note', id, set: { about: edit.to } }))
  const name = `rename ${edit.to} to ${edit.name}`
  return { do: 'several', name, edits: [back, ...mend] }
}

/** Puts a dimension elsewhere in the list, which is the order of the table. */
export function moveDimension({ lists }: WorkingCopy, edit: EditOf<'move-dimension'>): Edit {
  const from = placeIn(lists.dimension, edit.name, 'dimension')
  const item = lists.dimension.at(from)
  lists.dimension.remove(from)
  insert(lists.dimension, item, edit.index, 'dimension')
  return { do: 'move-dimension', name: edit.name, index: from }
}
