import { reason } from '../../words/core-words.ts'
import { mintedFor } from '../ids/id-form.ts'
import { type Labelled, labelOf } from '../ids/label.ts'
import { inOneCase, thingsCalled } from '../ids/thing-called.ts'
import { ITEM_KINDS, isItemKind } from '../model/item-kinds.ts'
import { ADOPTION_RULES } from '../model/schema.ts'
import type { Job } from '../model/types.ts'
import { JobError } from '../text/job-error.ts'

type Fields = Record<string, unknown>

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** Fields of things that name another one, with the list that it stands in. */
const NAMES_ONE = {
  sheet: 'sheets',
  view: 'views',
  instrument: 'instruments',
  mark: 'marks',
  marks: 'marks',
  by: 'people',
  adoptedBy: 'people',
  changedBy: 'people',
  withdrawnBy: 'people',
} as const

const namesOne = (field: string): field is keyof typeof NAMES_ONE => Object.hasOwn(NAMES_ONE, field)

/** The one thing that a text says, by its id; the text itself where it says none. @throws JobError where it says several */
function idOf(items: readonly Labelled[], said: unknown): unknown {
  if (typeof said !== 'string') return said
  const [only, ...others] = thingsCalled(items, said)
  if (only === undefined) return said
  if (others.length === 0) return only.id
  const called = (item: Labelled): string =>
    mintedFor(item.id) === undefined ? item.id : `${labelOf(item)}: ${item.id}`
  throw new JobError(reason('edit.several-called', { said, things: [only, ...others].map(called) }))
}

/** What a note is about, by its name or id where a text says one thing only. */
function subjectOf(job: Job, said: unknown): unknown {
  if (typeof said !== 'string' || job.dimensions.some(({ name }) => name === said)) return said
  const things = [job.sheets, job.views, job.marks, job.relations, job.instruments].flatMap((items) =>
    thingsCalled<Labelled>(items, said).map(({ id }) => id),
  )
  const dimensions = job.dimensions.filter(({ label }) => inOneCase(label) === inOneCase(said))
  const [only, another] = things.includes(said) ? [said] : [...things, ...dimensions.map(({ name }) => name)]
  return another === undefined && only !== undefined ? only : said
}

/** A thing or a change of one, with ids wherever it names another. */
function namingById(value: unknown, job: Job): unknown {
  if (Array.isArray(value)) return value.map((one) => namingById(one, job))
  if (!isFields(value)) return value
  return Object.fromEntries(
    Object.entries(value).map(([field, held]) => {
      if (field === 'about') return [field, subjectOf(job, held)]
      if (!namesOne(field)) return [field, namingById(held, job)]
      const items = job[NAMES_ONE[field]]
      return [field, Array.isArray(held) ? held.map((one) => idOf(items, one)) : idOf(items, held)]
    }),
  )
}

/** The name of the one dimension that a text says: by its name, else by what it is. */
function dimensionOf({ dimensions }: Job, said: unknown): unknown {
  if (typeof said !== 'string' || dimensions.some(({ name }) => name === said)) return said
  const found = dimensions.filter(({ label }) => inOneCase(label) === inOneCase(said))
  if (found.length > 1) {
    const things = found.map(({ name }) => name)
    throw new JobError(reason('edit.several-called', { said, things }))
  }
  return found[0]?.name ?? said
}

/** The list that the thing stands in which an edit goes to by its id; undefined: none. */
function listFor(does: string, edit: Fields, job: Job): readonly Labelled[] | undefined {
  const kind = does.replace(/^[a-z]+-/, '')
  if (kind === 'evidence') return job.dimensions.find(({ name }) => name === edit['dimension'])?.evidence
  if (kind === 'reference') return job.views.find(({ id }) => id === edit['view'])?.references
  return isItemKind(kind) && kind !== 'dimension' ? job[ITEM_KINDS[kind].list] : undefined
}

/**
 * An edit as a person writes it, with ids where they wrote labels: `circle 12` of a mark, `found 1` of evidence, the name
 * of a view. What says nothing in the job stays as it is.
 * @param job the job before the edit
 * @throws JobError where a text says several things
 */
export function idsOfLabels(edit: unknown, job: Job): unknown {
  if (!isFields(edit)) return edit
  const { do: does, edits } = edit
  if (typeof does !== 'string') return edit
  if (does === 'several') {
    return Array.isArray(edits) ? { ...edit, edits: edits.map((one) => idsOfLabels(one, job)) } : edit
  }
  const read: Fields = { ...(namingById(edit, job) as Fields) }
  for (const field of does.endsWith('-dimension') ? ['name'] : ['dimension']) {
    if (read[field] !== undefined) read[field] = dimensionOf(job, read[field])
  }
  const list = listFor(does, read, job)
  if (list !== undefined && read['id'] !== undefined) read['id'] = idOf(list, read['id'])
  const { adopt } = read
  if (typeof adopt === 'string' && !ADOPTION_RULES.has(adopt)) {
    const from = job.dimensions.find(({ name }) => name === read['dimension'])?.evidence ?? []
    read['adopt'] = idOf(from, adopt)
  }
  return read
}
