import { type Edit, HEAD_SCHEMA } from '../../model/edit-schema.ts'
import { jobSchema } from '../../model/schema.ts'
import type { Job } from '../../model/types.ts'
import type { EditOf } from './applied.ts'
import { changeFields, type FieldChange } from './change-fields.ts'
import type { WorkingCopy } from './working-copy.ts'

const NOT_IN_HEAD = Object.keys(jobSchema.shape).filter((name) => !Object.hasOwn(HEAD_SCHEMA.shape, name))

/** Changes what a job says of itself: title, unit, general tolerance, gauge standard. */
export function editHead(copy: WorkingCopy, edit: EditOf<'describe'>): Edit {
  const rest: Record<string, unknown> = {}
  const head: Record<string, unknown> = {}
  for (const [key, value] of Object.entries(copy.described)) {
    ;(NOT_IN_HEAD.includes(key) ? rest : head)[key] = value
  }
  const { item, back } = changeFields(head, edit as FieldChange, 'The job', HEAD_SCHEMA, NOT_IN_HEAD)
  copy.describe({ ...rest, ...item } as unknown as Job)
  return { do: 'describe', ...back } as Edit
}
