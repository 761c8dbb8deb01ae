import { type Edit, HEAD_SCHEMA } from '../../model/edit-schema.ts'
import { jobSchema } from '../../model/schema.ts'
import type { Job } from '../../model/types.ts'
import type { Applied, EditOf } from './applied.ts'
import { changeFields, type FieldChange } from './change-fields.ts'

const NOT_IN_HEAD = Object.keys(jobSchema.shape).filter((name) => !Object.hasOwn(HEAD_SCHEMA.shape, name))

/** Changes what a job says of itself: title, unit, general tolerance, gauge standard. */
export function editHead(job: Job, edit: EditOf<'describe'>): Applied {
  const rest: Record<string, unknown> = {}
  const head: Record<string, unknown> = {}
  for (const [key, value] of Object.entries(job)) (NOT_IN_HEAD.includes(key) ? rest : head)[key] = value
  const { item, back } = changeFields(head, edit as FieldChange, 'The job', HEAD_SCHEMA, NOT_IN_HEAD)
  return { job: { ...rest, ...item } as unknown as Job, inverse: { do: 'describe', ...back } as Edit }
}
