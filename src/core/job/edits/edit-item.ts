import { ITEM_KINDS } from '../model/item-kinds.ts'
import type { Job } from '../model/types.ts'
import type { Applied } from './applied.ts'
import { applyListEdit, type ListEdit } from './apply-list-edit.ts'
import { fieldChange } from './change-fields.ts'
import type { Edit, ItemKind } from './edit-types.ts'

/** The edit of one of the job's own lists, from what is done to the list. */
function itemEdit(kind: ItemKind, edit: ListEdit<object>): Edit {
  const does = { do: `${edit.verb}-${kind}` }
  if (edit.verb === 'add') return { ...does, item: edit.item, index: edit.index } as Edit
  const named = { ...does, [ITEM_KINDS[kind].key]: edit.name }
  return (edit.verb === 'change' ? { ...named, ...fieldChange(edit) } : named) as Edit
}

/** Edits one of the job's own lists. @throws JobError as `applyListEdit` */
export function editItem(job: Job, kind: ItemKind, edit: ListEdit<object>): Applied {
  const { list, schema, key, locked } = ITEM_KINDS[kind]
  const after = applyListEdit<object>(job[list], edit, { word: kind, key, schema, locked })
  return { job: { ...job, [list]: after.list }, inverse: itemEdit(kind, after.back) }
}
