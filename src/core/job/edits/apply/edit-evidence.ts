import { reason } from '../../../words/core-words.ts'
import type { Edit } from '../../model/edit-schema.ts'
import { evidenceSchema } from '../../model/schema.ts'
import type { Evidence } from '../../model/types.ts'
import { JobError } from '../../text/job-error.ts'
import { applyListEdit, type ListEdit, type ListRules, placeIn } from './apply-list-edit.ts'
import { fieldChange } from './change-fields.ts'
import { changeDimension } from './edit-dimension.ts'
import { InnerList } from './edited-list.ts'
import type { WorkingCopy } from './working-copy.ts'

const RULES: ListRules = { word: 'evidence', key: 'id', schema: evidenceSchema, locked: ['withdrawn'] }

function evidenceEdit(dimension: string, edit: ListEdit<Evidence>): Edit {
  switch (edit.verb) {
    case 'add':
      return { do: 'add-evidence', dimension, item: edit.item, index: edit.index }
    case 'change':
      return { do: 'change-evidence', dimension, id: edit.name, ...fieldChange(edit) } as Edit
    case 'remove':
      return { do: 'remove-evidence', dimension, id: edit.name, undo: true }
  }
}

/** Edits the evidence of one dimension. */
export function editEvidence(copy: WorkingCopy, name: string, edit: ListEdit<Evidence>): Edit {
  let back: ListEdit<Evidence> = edit
  changeDimension(copy, name, (dimension) => {
    const evidence = new InnerList(dimension.evidence, 'id')
    back = applyListEdit(evidence, edit, RULES)
    return { ...dimension, evidence: evidence.items }
  })
  return evidenceEdit(name, back)
}

/** Says why a piece of evidence no longer counts, or that it counts again when `why` is undefined. */
export function withdraw(copy: WorkingCopy, name: string, id: string, why: string | undefined): Edit {
  let inverse: Edit = { do: 'reinstate-evidence', dimension: name, id }
  changeDimension(copy, name, (dimension) => {
    const pieces = new InnerList(dimension.evidence, 'id')
    const at = placeIn(pieces, id, RULES.word)
    const { withdrawn, ...evidence } = pieces.at(at)
    if (withdrawn !== undefined) inverse = { do: 'withdraw-evidence', dimension: name, id, why: withdrawn }
    else if (why === undefined) {
      throw new JobError(reason('edit.not-withdrawn', { id, dimension: name }))
    }
    pieces.replace(at, (why === undefined ? evidence : { ...evidence, withdrawn: why }) as Evidence)
    return { ...dimension, evidence: pieces.items }
  })
  return inverse
}
