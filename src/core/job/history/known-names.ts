import { ID_KINDS } from '../ids/id-form.ts'
import { called, type Labelled, labelOf } from '../ids/label.ts'
import { listsOf } from '../ids/labels-of-job.ts'
import type { Job, Unit } from '../model/types.ts'
import type { Change, Thing } from './change.ts'
import type { Fields } from './changed-fields.ts'
import { KnownEvidence } from './known-evidence.ts'

/** What the things in a history are called. */
export interface ThingNames {
  /** The unit of the job. */
  readonly unit: Unit
  /** What people call a thing: a dimension, view, sheet or person by the name, others by the label, or a noun and the id. */
  nameOf(thing: Pick<Thing, 'kind' | 'id'>): string
  /** What kind of mark one is; undefined where that is not known. */
  kindOfMark(id: string): string | undefined
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
  reference: 'known size',
  evidence: 'evidence',
  relation: 'relation',
  note: 'note',
}

function nameIn({ kind, id }: Pick<Thing, 'kind' | 'id'>, item: Fields): string {
  const labelled: Labelled = { ...item, id }
  const noun = NOUNS[kind]
  if (noun !== undefined) return called(noun, labelled)
  const name = item[NAMED[kind] ?? '']
  return typeof name === 'string' && name !== '' ? name : labelOf(labelled)
}

/**
 * The names of the things of a job, and of those that are gone, once the history was read back to where they went.
 */
export class KnownNames implements ThingNames {
  readonly unit: Unit
  readonly #known = new Map<string, string>()
  readonly #marks = new Map<string, string>()
  readonly #evidence: KnownEvidence

  constructor(job: Job) {
    this.unit = job.unit
    this.#evidence = new KnownEvidence(job)
    for (const kind of ID_KINDS) {
      for (const list of listsOf(job, kind))
        for (const item of list) this.#learn({ kind, id: item.id }, item as unknown as Fields)
    }
  }

  nameOf(thing: Pick<Thing, 'kind' | 'id'>): string {
    return this.#known.get(keyOf(thing)) ?? nameIn(thing, {})
  }

  kindOfMark(id: string): string | undefined {
    return this.#marks.get(id)
  }

  /**
   * Goes back before what a line did, and takes in what came or went. Lines are to be given once, from the newest back.
   */
  goBack(changes: readonly Change[]): void {
    this.learn(changes)
    this.#evidence.goBack(changes)
  }

  /** What the line did that was gone back before last: adoptions with what is known of the evidence then. */
  withEvidence(changes: readonly Change[]): Change[] {
    return changes.map((change) =>
      change.verb === 'adopted' ? { ...change, from: this.#evidence.adopting(change) } : change,
    )
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
    if (thing.kind === 'mark' && typeof item['kind'] === 'string') this.#marks.set(thing.id, item['kind'])
  }
}

const keyOf = ({ kind, id }: Pick<Thing, 'kind' | 'id'>): string => `${kind} ${id}`
