import { RESERVED_NAMES } from '../../core/formula/formula.ts'
import { applyEdit, readEdit } from '../../core/job/edits/edit.ts'
import type { Job } from '../../core/job/model/types.ts'
import type { AnyReason } from '../../core/words/reason.ts'
import { refusalOf } from '../words/refusal.ts'
import { reason } from '../words/window-words.ts'

/**
 * A name that formulas can use, made from what a person calls a dimension: `Drum, outside Ø` → `drum_outside_dia`.
 * Empty when the label has no letter or digit of the Latin alphabet.
 */
export function nameOfLabel(label: string): string {
  const name = label
    .replace(/[Øø⌀]/g, ' dia ')
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/ß/g, 'ss')
    .replace(/[æÆ]/g, 'ae')
    .replace(/œ|Œ/g, 'oe')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '_')
    .replace(/^_+|_+$/g, '')
  if (name === '') return ''
  const safe = /^\d/.test(name) ? `d_${name}` : name
  return RESERVED_NAMES.has(safe) || safe in Object.prototype ? `${safe}_dim` : safe
}

/** Whether a dimension of the job has that name. */
export const isTaken = (job: Job, name: string): boolean => job.dimensions.some((one) => one.name === name)

/** Why a new dimension can't have a name; null when it can. */
export function nameProblem(job: Job, name: string): AnyReason | null {
  if (isTaken(job, name)) return reason('written.name-taken', { name })
  const alone = { ...job, views: [], marks: [], relations: [], notes: [], dimensions: [] }
  const item = { name, label: name, kind: 'length' as const, evidence: [] }
  return refusalOf(() => applyEdit(alone, readEdit({ do: 'add-dimension', item })))
}
