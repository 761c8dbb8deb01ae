import { z } from 'zod'
import { jobSchema } from '../model/schema.ts'
import type { Job } from '../model/types.ts'
import type { Applied, EditOf } from './applied.ts'
import { changeFields, type FieldChange } from './change-fields.ts'
import type { Edit } from './edit-types.ts'

const { title, unit, tolerance, gauge, ...others } = jobSchema.shape
/** What a job says of itself. */
export const HEAD_SCHEMA = z.looseObject({ title, unit, tolerance, gauge })
const NOT_IN_HEAD = Object.keys(others)

/** Changes what a job says of itself: title, unit, general tolerance, gauge standard. */
export function editHead(job: Job, edit: EditOf<'describe'>): Applied {
  const rest: Record<string, unknown> = {}
  const head: Record<string, unknown> = {}
  for (const [key, value] of Object.entries(job)) (NOT_IN_HEAD.includes(key) ? rest : head)[key] = value
  const { item, back } = changeFields(head, edit as FieldChange, 'The job', HEAD_SCHEMA, NOT_IN_HEAD)
  return { job: { ...rest, ...item } as unknown as Job, inverse: { do: 'describe', ...back } as Edit }
}
