import { z } from 'zod'
import { problemOfUse } from '../checks/uses.ts'
import { ITEM_KINDS } from '../model/item-kinds.ts'
import { evidenceSchema, referenceSchema } from '../model/schema.ts'
import { entryOf, fieldsOf } from '../model/schema-shape.ts'
import type { Job } from '../model/types.ts'
import { nearestWord } from '../text/edit-distance.ts'
import { JobError } from '../text/job-error.ts'
import { quoted } from '../text/quoted.ts'
import { HEAD_SCHEMA } from './edit-head.ts'
import type { Edit, ItemKind } from './edit-types.ts'

const dateTime = z.iso.datetime({ offset: true, local: true })

/** The schema of what an edit adds or changes. */
function schemaFor(what: string): unknown {
  if (what === 'evidence') return evidenceSchema
  if (what === 'reference') return referenceSchema
  return Object.hasOwn(ITEM_KINDS, what) ? ITEM_KINDS[what as ItemKind].schema : undefined
}

function checkField(name: string, known: Iterable<string>, what: string): void {
  const meant = nearestWord(name, known)
  if (meant !== undefined) {
    throw new JobError(`The edit: ${what} has no field ${quoted(name)}; did you mean ${quoted(meant)}?`)
  }
}

function checkFields(value: unknown, schemas: readonly unknown[], what: string): void {
  if (Array.isArray(value)) {
    const entries = schemas.map(entryOf).filter((entry) => entry !== undefined)
    for (const one of value) checkFields(one, entries, what)
    return
  }
  if (typeof value !== 'object' || value === null) return
  const known = new Map(schemas.flatMap((schema) => [...fieldsOf(schema)]))
  if (known.size === 0) return
  for (const [name, inner] of Object.entries(value)) {
    const schema = known.get(name)
    if (schema === undefined) checkField(name, known.keys(), what)
    else checkFields(inner, schema, `${quoted(name)} of ${what}`)
  }
}

function checkTime(item: unknown, what: string): void {
  if (typeof item !== 'object' || item === null || !('at' in item)) return
  if (dateTime.safeParse(item.at).success) return
  throw new JobError(
    `The edit: "at" of ${what} is ${quoted(item.at)}, and must be an ISO 8601 date and time such as "1911-03-09T10:05:00Z".`,
  )
}

const TIMED: ReadonlySet<string> = new Set(['mark', 'evidence', 'note'])

/**
 * Looks at an edit as a person gives it, before it is made for the first time, for slips that a file is not to be
 * refused for: a field name miswritten, a time that is none, a person removed whose work stays.
 * Unknown fields that resemble no known one pass.
 *
 * @param job the job before the edit
 * @throws JobError with the first slip
 */
export function reviewEdit(job: Job, edit: Edit): void {
  if (edit.do === 'several') {
    for (const one of edit.edits) reviewEdit(job, one)
    return
  }
  if (edit.do === 'remove-person') {
    const problem = job.people.length === 1 ? problemOfUse(job, 'person', edit.id) : null
    if (problem !== null) throw new JobError(problem)
    return
  }
  const what = edit.do === 'describe' ? 'job' : edit.do.replace(/^(add|change)-/, '')
  const schema = edit.do === 'describe' ? HEAD_SCHEMA : schemaFor(what)
  if (schema === undefined) return
  const item: unknown = 'item' in edit ? edit.item : 'set' in edit ? edit.set : undefined
  const thing = `the ${what}`
  checkFields(item, [schema], thing)
  const known = fieldsOf(schema)
  if ('clear' in edit) {
    for (const name of edit.clear ?? []) if (!known.has(name)) checkField(name, known.keys(), thing)
  }
  if (TIMED.has(what)) checkTime(item, thing)
  if (edit.do === 'add-dimension') {
    for (const { id, ...evidence } of edit.item.evidence) checkTime(evidence, `evidence ${quoted(id)}`)
  }
}
