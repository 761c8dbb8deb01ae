import { applyEdit, type Edit, readEdit } from '../../core/job/edits/edit.ts'
import type { Job } from '../../core/job/model/types.ts'
import type { AnyReason } from '../../core/words/reason.ts'
import { refusalOf } from '../words/refusal.ts'

/** The edit that gives a field of a dimension another text; an empty one takes the field away. */
export function fieldEdit(name: string, field: 'tolerance' | 'note', text: string): Edit {
  const wanted = text.trim()
  if (wanted === '') return { do: 'change-dimension', name, clear: [field] }
  return { do: 'change-dimension', name, set: { [field]: wanted } }
}

/** Why a field of a dimension can't have a text; null when it can. */
export function fieldProblem(
  job: Job,
  name: string,
  field: 'tolerance' | 'note',
  text: string,
): AnyReason | null {
  return refusalOf(() => applyEdit(job, readEdit(fieldEdit(name, field, text))))
}
