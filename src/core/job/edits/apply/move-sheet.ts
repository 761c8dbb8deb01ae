import type { Edit } from '../../model/edit-schema.ts'
import type { EditOf } from './applied.ts'
import { insert, placeIn } from './apply-list-edit.ts'
import type { WorkingCopy } from './working-copy.ts'

/** Puts a sheet elsewhere in the list, which is the order of the set. @throws JobError when there is no such sheet */
export function moveSheet({ lists }: WorkingCopy, { id, index }: EditOf<'move-sheet'>): Edit {
  const from = placeIn(lists.sheet, id, 'sheet')
  const item = lists.sheet.at(from)
  lists.sheet.remove(from)
  insert(lists.sheet, item, index, 'sheet')
  return { do: 'move-sheet', id, index: from }
}
