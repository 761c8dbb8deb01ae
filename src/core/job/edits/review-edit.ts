import { z } from 'zod'
import { type CoreReason, reason } from '../../words/core-words.ts'
import { nameIn } from '../../words/name-in.ts'
import { quoted } from '../../words/quoted.ts'
import { problemOfUse } from '../checks/uses.ts'
import { problemOfViewName } from '../checks/view-name.ts'
import { labelBesideId } from '../ids/label.ts'
import { labelIn } from '../ids/labels-of-job.ts'
import { type Edit, HEAD_SCHEMA } from '../model/edit-schema.ts'
import { ITEM_KINDS, isItemKind } from '../model/item-kinds.ts'
import { meaningOf } from '../model/meaning.ts'
import { dismissedSchema, evidenceSchema, referenceSchema } from '../model/schema.ts'
import { entryOf, fieldsOf, unwrapped } from '../model/schema-shape.ts'
import type { Job } from '../model/types.ts'
import { nearestWord } from '../text/edit-distance.ts'
import { JobError } from '../text/job-error.ts'
import { reviewWithdrawn } from './review-withdrawn.ts'

const dateTime = z.iso.datetime({ offset: true, local: true })

/** The schema of what an edit adds or changes. */
function schemaFor(what: string): unknown {
  if (what === 'job') return HEAD_SCHEMA
  if (what === 'evidence') return evidenceSchema
  if (what === 'reference') return referenceSchema
  if (what === 'dismissed figure') return dismissedSchema
  return isItemKind(what) ? ITEM_KINDS[what].schema : undefined
}

/** What an edit adds or changes. */
function whatOf(edit: Edit): string {
  if (edit.do === 'describe') return 'job'
  return edit.do === 'dismiss-figure' ? 'dismissed figure' : edit.do.replace(/^(add|change)-/, '')
}

function checkField(field: string, known: Iterable<string>, what: string): void {
  const meant = nearestWord(field, known)
  if (meant !== undefined) throw new JobError(reason('edit.field-miswritten', { what, field, meant }))
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

function isTime(schema: unknown): boolean {
  const plain = unwrapped(schema)
  return plain instanceof z.ZodType && meaningOf(plain)?.is === 'time'
}

function checkTime(value: unknown, field: string, what: string): void {
  if (value === undefined || dateTime.safeParse(value).success) return
  throw new JobError(reason('edit.no-time', { what, field, at: quoted(value) }))
}

/** Refuses times that are none among the fields of a thing. */
function checkTimes(thing: object, schema: unknown, what: string): void {
  const known = fieldsOf(schema)
  for (const [name, value] of Object.entries(thing)) {
    if (known.get(name)?.some(isTime)) checkTime(value, name, what)
  }
}

/**
 * Looks at an edit as a person gives it, before it is made for the first time, for slips that a file is not to be
 * refused for: a field name miswritten, a time that is none, a name that another view on the sheet has, a person removed whose work stays, withdrawn evidence that is
 * adopted or withdrawn again.
 * Unknown fields that resemble no known one pass.
 *
 * @param job the job before the edit
 * @throws JobError with the first slip
 */
export function reviewEdit(job: Job, edit: Edit): void {
  reviewWithdrawn(job, edit)
  reviewOne(job, edit)
}

function reviewViewName(job: Job, edit: Edit): void {
  const problem =
    edit.do === 'add-view'
      ? problemOfViewName(job, edit.item.sheet, edit.item.name)
      : edit.do === 'change-view'
        ? renameProblem(job, edit.id, edit.set?.name)
        : null
  if (problem !== null) throw new JobError(problem)
}

function renameProblem(job: Job, id: string, name: string | undefined): CoreReason | null {
  const view = job.views.find((one) => one.id === id)
  if (view === undefined || typeof name !== 'string' || name === view.name) return null
  return problemOfViewName(job, view.sheet, name, id)
}

function reviewOne(job: Job, edit: Edit): void {
  if (edit.do === 'several') {
    for (const one of edit.edits) reviewOne(job, one)
    return
  }
  if (edit.do === 'remove-person') {
    const problem = job.people.length === 1 ? problemOfUse(job, 'person', edit.id) : null
    if (problem !== null) throw new JobError(nameIn(problem, (id) => labelIn(job, id)))
    return
  }
  reviewViewName(job, edit)
  if ('at' in edit) checkTime(edit.at, 'at', `"${edit.do}"`)
  const what = whatOf(edit)
  const schema = schemaFor(what)
  if (schema === undefined) return
  const item = 'item' in edit ? edit.item : 'set' in edit ? edit.set : undefined
  const thing = `the ${what}`
  checkFields(item, [schema], thing)
  if ('clear' in edit) {
    const known = fieldsOf(schema)
    for (const name of edit.clear ?? []) if (!known.has(name)) checkField(name, known.keys(), thing)
  }
  if (item !== undefined) checkTimes(item, schema, thing)
  if (edit.do === 'add-dimension') {
    for (const one of edit.item.evidence)
      checkTimes(one, evidenceSchema, labelBesideId(one) ?? `evidence ${quoted(one.id)}`)
  }
  if (edit.do === 'add-view') {
    for (const one of edit.item.references) checkTimes(one, referenceSchema, `reference ${quoted(one.id)}`)
  }
}
