import type { Edit } from '../../model/edit-schema.ts'
import { referenceSchema } from '../../model/schema.ts'
import type { Reference } from '../../model/types.ts'
import { applyListEdit, type ListEdit, type ListRules, placeIn } from './apply-list-edit.ts'
import { fieldChange } from './change-fields.ts'
import { InnerList } from './edited-list.ts'
import type { WorkingCopy } from './working-copy.ts'

const RULES: ListRules = { word: 'figured size', key: 'id', schema: referenceSchema, locked: [] }

function referenceEdit(view: string, edit: ListEdit<Reference>): Edit {
  switch (edit.verb) {
    case 'add':
      return { do: 'add-reference', view, item: edit.item, index: edit.index }
    case 'change':
      return { do: 'change-reference', view, id: edit.name, ...fieldChange(edit) } as Edit
    case 'remove':
      return { do: 'remove-reference', view, id: edit.name }
  }
}

/** Edits the references of one view. */
export function editReference({ lists }: WorkingCopy, name: string, edit: ListEdit<Reference>): Edit {
  const at = placeIn(lists.view, name, 'view')
  const view = lists.view.at(at)
  const references = new InnerList(view.references, 'id')
  const back = applyListEdit(references, edit, RULES)
  lists.view.replace(at, { ...view, references: references.items })
  return referenceEdit(name, back)
}
