import type { Edit } from '../../core/job/edits/edit.ts'
import { applyEdit, readEdit } from '../../core/job/edits/edit.ts'
import type { Job } from '../../core/job/model/types.ts'
import { refusalOf } from '../bench/refusal.ts'

/** The edit that gives a field of a dimension another text; an empty one takes the field away. */
export function fieldEdit(name: string, field: 'tolerance' | 'note', text: string): Edit {
  const wanted = text.trim()
  if (wanted === '') return { do: 'change-dimension', name, clear: [field] }
  return { do: 'change-dimension', name, set: { [field]: wanted } }
}

/** Why a field of a dimension can't have a text, in a sentence; empty when it can. */
export function changedField(job: Job, name: string, field: 'tolerance' | 'note', text: string): string {
  return refusalOf(() => applyEdit(job, readEdit(fieldEdit(name, field, text))))
}
