import type { Edit } from '../../model/edit-schema.ts'
import { ITEM_KINDS } from '../../model/item-kinds.ts'
import { applyListEdit } from './apply-list-edit.ts'
import type { EditedList } from './edited-list.ts'
import { editOfItem, type ItemEdit } from './item-edit.ts'
import type { WorkingCopy } from './working-copy.ts'

/** Edits one of the job's own lists. @throws JobError as `applyListEdit` */
export function editItem({ lists }: WorkingCopy, { kind, does }: ItemEdit): Edit {
  const { schema, key, locked } = ITEM_KINDS[kind]
  // An edit of a kind gives items of that kind.
  const list: EditedList<object> = lists[kind]
  return editOfItem({ kind, does: applyListEdit(list, does, { word: kind, key, schema, locked }) }, key)
}
