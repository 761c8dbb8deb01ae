import type { Edit } from '../../model/edit-schema.ts'
import { isItemKind } from '../../model/item-kinds.ts'
import type { ItemKind } from '../../model/meaning.ts'
import type { ListEdit } from './apply-list-edit.ts'
import { type FieldChange, fieldChange } from './change-fields.ts'

/** What an edit does to an item of one of the job's own lists. */
export interface ItemEdit {
  readonly kind: ItemKind
  readonly does: ListEdit<object>
}

/** What an edit does to one of the job's own lists; null where it does something else. */
export function itemEditOf(edit: Edit): ItemEdit | null {
  const [verb, kind = ''] = edit.do.split('-')
  if (!isItemKind(kind)) return null
  if ('item' in edit) return { kind, does: { verb: 'add', item: edit.item, index: edit.index } }
  if (edit.do === 'several' || edit.do === 'describe' || !('id' in edit || 'name' in edit)) return null
  const name = 'id' in edit ? edit.id : edit.name
  if (verb === 'remove') return { kind, does: { verb, name } }
  return verb === 'change' ? { kind, does: { verb, name, ...fieldChange(edit as FieldChange) } } : null
}

/** The edit that does something to an item of one of the job's own lists. */
export function editOfItem({ kind, does }: ItemEdit, key: 'id' | 'name'): Edit {
  // The schema has such an edit for every kind and verb; the types can't follow words that are put together.
  const word = { do: `${does.verb}-${kind}` }
  if (does.verb === 'add') return { ...word, item: does.item, index: does.index } as Edit
  const named = { ...word, [key]: does.name }
  return (does.verb === 'change' ? { ...named, ...fieldChange(does) } : named) as Edit
}
