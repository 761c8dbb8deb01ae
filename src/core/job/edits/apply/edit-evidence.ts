import { reason } from '../../../words/core-words.ts'
import type { Edit } from '../../model/edit-schema.ts'
import { evidenceSchema } from '../../model/schema.ts'
import type { Evidence, Job } from '../../model/types.ts'
import { JobError } from '../../text/job-error.ts'
import type { Applied } from './applied.ts'
import { applyListEdit, indexIn, type ListEdit, type ListRules } from './apply-list-edit.ts'
import { fieldChange } from './change-fields.ts'
import { withDimension } from './edit-dimension.ts'
import { replaced } from './list-with.ts'

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
export function editEvidence(job: Job, name: string, edit: ListEdit<Evidence>): Applied {
  let back: ListEdit<Evidence> = edit
  const next = withDimension(job, name, (dimension) => {
    const after = applyListEdit(dimension.evidence, edit, RULES)
    back = after.back
    return { ...dimension, evidence: after.list }
  })
  return { job: next, inverse: evidenceEdit(name, back) }
}

/** Says why a piece of evidence no longer counts, or that it counts again when `why` is undefined. */
export function withdraw(job: Job, name: string, id: string, why: string | undefined): Applied {
  let inverse: Edit = { do: 'reinstate-evidence', dimension: name, id }
  const next = withDimension(job, name, (dimension) => {
    const at = indexIn(dimension.evidence, id, RULES)
    const { withdrawn, ...evidence } = dimension.evidence[at] as Evidence
    if (withdrawn !== undefined) inverse = { do: 'withdraw-evidence', dimension: name, id, why: withdrawn }
    else if (why === undefined) {
      throw new JobError(reason('edit.not-withdrawn', { id, dimension: name }))
    }
    const item = (why === undefined ? evidence : { ...evidence, withdrawn: why }) as Evidence
    return { ...dimension, evidence: replaced(dimension.evidence, at, item) }
  })
  return { job: next, inverse }
}
