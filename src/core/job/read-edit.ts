import { editSchema } from './edit-schema.ts'
import type { Edit } from './edit-types.ts'
import { JobError } from './job-error.ts'
import { DEEPEST_EDIT, plainJson } from './plain-json.ts'
import { schemaProblem } from './schema-problem.ts'

/**
 * The edit in a JSON value; nothing is shared with it.
 *
 * @throws JobError, a sentence with the first problem; never anything else
 */
export function readEdit(json: unknown): Edit {
  if (typeof json !== 'object' || json === null || Array.isArray(json)) {
    throw new JobError('This is not an edit: an edit is a JSON object that says what to "do".')
  }
  const value = plainJson(json, 'The edit', DEEPEST_EDIT)
  const parsed = editSchema.safeParse(value)
  if (!parsed.success) {
    throw new JobError(schemaProblem(parsed.error, value, { whole: 'The edit', inside: 'The edit: ' }))
  }
  return parsed.data as Edit
}
