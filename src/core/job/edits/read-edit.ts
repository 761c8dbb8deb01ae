import { reason } from '../../words/core-words.ts'
import { quoted } from '../../words/quoted.ts'
import { EDIT_WORDS, type Edit, editSchema } from '../model/edit-schema.ts'
import { fitsSchema } from '../model/fits-schema.ts'
import { nearestWord } from '../text/edit-distance.ts'
import { JobError } from '../text/job-error.ts'
import { place } from '../text/place.ts'
import { DEEPEST_EDIT, plainJson } from '../text/plain-json.ts'
import { schemaProblem } from '../text/schema-problem.ts'

const fitsEdit = fitsSchema(editSchema)

/** How far a word may be from that of an edit to be taken for it: a third of its letters. */
const third = (word: string): number => Math.ceil(word.length / 3)

/** Refuses what no edit does, at any depth of `several`. */
function checkDo(edit: unknown, path: readonly PropertyKey[] = [], whole: unknown = edit): void {
  if (typeof edit !== 'object' || edit === null || Array.isArray(edit)) return
  const { do: does, edits } = edit as Record<string, unknown>
  if (does === undefined) return
  if (typeof does !== 'string' || !EDIT_WORDS.has(does)) {
    const meant = typeof does === 'string' ? nearestWord(does, EDIT_WORDS, third) : undefined
    throw new JobError(
      reason('edit.does-nothing-known', {
        where: path.length === 0 ? '' : place(whole, path),
        does: quoted(does),
        meant: meant ?? null,
      }),
    )
  }
  if (does === 'several' && Array.isArray(edits)) {
    edits.forEach((one, i) => {
      checkDo(one, [...path, 'edits', i], whole)
    })
  }
}

/**
 * The edit in a JSON value; nothing is shared with it.
 *
 * @throws JobError, a sentence with the first problem; never anything else
 */
export function readEdit(json: unknown): Edit {
  if (typeof json !== 'object' || json === null || Array.isArray(json)) {
    throw new JobError(reason('edit.not-an-edit'))
  }
  const value = plainJson(json, 'The edit', DEEPEST_EDIT)
  checkDo(value)
  if (fitsEdit(value)) return value as Edit
  const parsed = editSchema.safeParse(value)
  if (!parsed.success) {
    throw new JobError(schemaProblem(parsed.error, value, { whole: 'The edit', inside: 'The edit: ' }))
  }
  return parsed.data
}
