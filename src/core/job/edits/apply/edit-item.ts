import type { Edit } from '../../model/edit-schema.ts'
import { ITEM_KINDS } from '../../model/item-kinds.ts'
import type { Mark } from '../../model/types.ts'
import { applyListEdit, type ListEdit } from './apply-list-edit.ts'
import { editMark } from './edit-mark.ts'
import type { EditedList } from './edited-list.ts'
import { editOfItem, type ItemEdit } from './item-edit.ts'
import type { WorkingCopy } from './working-copy.ts'

/** Edits one of the job's own lists. @throws JobError as `applyListEdit` */
export function editItem({ lists }: WorkingCopy, { kind, does }: ItemEdit): Edit {
  if (kind === 'mark') return editMark(lists.mark, does as ListEdit<Mark>)
  const { schema, key, locked } = ITEM_KINDS[kind]
  // An edit of a kind gives items of that kind.
  const list: EditedList<object> = lists[kind]
  return editOfItem({ kind, does: applyListEdit(list, does, { word: kind, key, schema, locked }) }, key)
}
