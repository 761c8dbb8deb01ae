import type { Edit } from '../../model/edit-schema.ts'
import { referenceSchema } from '../../model/schema.ts'
import type { Job, Reference, View } from '../../model/types.ts'
import type { Applied } from './applied.ts'
import { applyListEdit, indexIn, type ListEdit, type ListRules } from './apply-list-edit.ts'
import { fieldChange } from './change-fields.ts'
import { replaced } from './list-with.ts'

const RULES: ListRules = { word: 'reference', key: 'id', schema: referenceSchema, locked: [] }

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
export function editReference(job: Job, name: string, edit: ListEdit<Reference>): Applied {
  const at = indexIn(job.views, name, { word: 'view', key: 'id' })
  const view = job.views[at] as View
  const { list: references, back } = applyListEdit(view.references, edit, RULES)
  return {
    job: { ...job, views: replaced(job.views, at, { ...view, references }) },
    inverse: referenceEdit(name, back),
  }
}
