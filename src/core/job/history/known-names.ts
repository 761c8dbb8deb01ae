import { called, type Labelled } from '../ids/label.ts'
import type { Job, Unit } from '../model/types.ts'
import type { Change, Thing } from './change.ts'
import type { Fields } from './changed-fields.ts'

/** What the things in a history are called. */
export interface ThingNames {
  /** The unit of the job. */
  readonly unit: Unit
  /** What people call a thing: a dimension, view, sheet or person by the name, others by a noun and their id. */
  nameOf(thing: Pick<Thing, 'kind' | 'id'>): string
}

/** The field by which people know a thing of a kind. */
const NAMED: { readonly [K in Thing['kind']]?: string } = {
  person: 'name',
  instrument: 'name',
  sheet: 'title',
  view: 'name',
}

const NOUNS: { readonly [K in Thing['kind']]?: string } = {
  mark: 'mark',
  reference: 'figured size',
  evidence: 'evidence',
  relation: 'relation',
  note: 'note',
}

function nameIn({ kind, id }: Pick<Thing, 'kind' | 'id'>, item: Fields): string {
  const noun = NOUNS[kind]
  if (noun !== undefined) return called(noun, { ...item, id } as Labelled)
  const name = item[NAMED[kind] ?? '']
  return typeof name === 'string' && name !== '' ? name : id
}

/** The kinds of things that are known by more than their id. */
const KINDS = [
  'person',
  'instrument',
  'sheet',
  'view',
  'mark',
  'reference',
  'evidence',
  'relation',
  'note',
] as const

const itemsOf = (job: Job, kind: Thing['kind']): readonly object[] => {
  switch (kind) {
    case 'person':
      return job.people
    case 'instrument':
      return job.instruments
    case 'sheet':
      return job.sheets
    case 'view':
      return job.views
    case 'mark':
      return job.marks
    case 'relation':
      return job.relations
    case 'note':
      return job.notes
    case 'reference':
      return job.views.flatMap(({ references }) => references)
    case 'evidence':
      return job.dimensions.flatMap(({ evidence }) => evidence)
    default:
      return []
  }
}

/**
 * The names of the things of a job, and of those that are gone, once the history was read back to where they went.
 */
export class KnownNames implements ThingNames {
  readonly unit: Unit
  readonly #known = new Map<string, string>()

  constructor(job: Job) {
    this.unit = job.unit
    for (const kind of KINDS) {
      for (const item of itemsOf(job, kind))
        this.#learn({ kind, id: (item as { id: string }).id }, item as Fields)
    }
  }

  nameOf(thing: Pick<Thing, 'kind' | 'id'>): string {
    return this.#known.get(keyOf(thing)) ?? nameIn(thing, {})
  }

  /** Takes in what came or went, so that older lines can call it by its name. */
  learn(changes: readonly Change[]): void {
    for (const { thing, verb, fields } of changes) {
      if (verb !== 'removed' && verb !== 'added') continue
      const item = Object.fromEntries(fields.map(({ field, before, after }) => [field, before ?? after]))
      this.#learn(thing, item)
    }
  }

  #learn(thing: Pick<Thing, 'kind' | 'id'>, item: Fields): void {
    const key = keyOf(thing)
    if (!this.#known.has(key)) this.#known.set(key, nameIn(thing, item))
  }
}

const keyOf = ({ kind, id }: Pick<Thing, 'kind' | 'id'>): string => `${kind} ${id}`
