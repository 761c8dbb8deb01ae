import { ID_KINDS } from '../ids/id-form.ts'
import { called, type Labelled, labelOf } from '../ids/label.ts'
import { listsOf } from '../ids/labels-of-job.ts'
import type { Job, Unit } from '../model/types.ts'
import { calledOf, isNamed, NAMED } from '../names/called-of.ts'
import type { Change, Thing } from './change.ts'
import type { Fields } from './changed-fields.ts'
import { KnownEvidence } from './known-evidence.ts'

/** What the things in a history are called. */
export interface ThingNames {
  /** The unit of the job. */
  readonly unit: Unit
  /** What people call a thing: a dimension, view, sheet or person by the name, others by the label, or a noun and the id. */
  nameOf(thing: Pick<Thing, 'kind' | 'id'>): string
  /** The same as undo has it: a mark by its label alone. */
  briefNameOf(thing: Pick<Thing, 'kind' | 'id'>): string
  /** What kind of mark one is; undefined where that is not known. */
  kindOfMark(id: string): string | undefined
  /** The same names as they were after a line of the history; null: before its first. */
  asOf(n: number | null): ThingNames
}

const NOUNS: { readonly [K in Thing['kind']]?: string } = {
  mark: 'mark',
  reference: 'figured size',
  evidence: 'evidence',
  relation: 'relation',
  note: 'note',
}

/** The field in which people have words of their own for a thing of a kind; undefined: there is none. */
export const wordsFieldOf = (kind: Thing['kind']): string | undefined =>
  kind === 'mark' ? 'label' : isNamed(kind) ? NAMED[kind] : undefined

/**
 * What stands in lines that may have given something another name, as JSON has it. What happened to one thing names
 * others, and they are to go by the names that they had then.
 */
export const RENAMING: readonly string[] = Object.keys(NAMED).map((kind) => `"change-${kind}"`)

/** The words that a field holds; undefined where it holds none. */
export const wordsIn = (value: unknown): string | undefined =>
  typeof value === 'string' && value.trim() !== '' ? value : undefined

/** The words of a thing from a line on, until those of a later line. */
interface Words {
  from: number
  readonly words: string | undefined
}

/** What is known of what a thing is called. */
interface Naming {
  readonly label: string
  /** The newest first. */
  readonly spans: Words[]
}

function namingOf({ kind, id }: Pick<Thing, 'kind' | 'id'>, item: Fields): Naming {
  const labelled: Labelled = { ...item, id }
  const noun = NOUNS[kind]
  const words = wordsIn(item[wordsFieldOf(kind) ?? ''])
  const label = noun === undefined ? labelOf({ ...labelled, name: undefined }) : called(noun, labelled)
  return { label, spans: [{ from: Number.NEGATIVE_INFINITY, words }] }
}

/** `Elevation` of a view, `circle 12 (Rim of the hood)` of a mark. */
const told = (kind: Thing['kind'], label: string, words: string | undefined): string =>
  words === undefined ? label : kind === 'mark' ? `${label} (${words})` : words

/**
 * The names of the things of a job, and of those that are gone, once the history was read back to where they went; and
 * what they were called before, once it was read back to where that was changed.
 */
export class KnownNames implements ThingNames {
  readonly unit: Unit
  readonly #known = new Map<string, Naming>()
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
    return this.#nameAt(thing, Number.POSITIVE_INFINITY)
  }

  briefNameOf(thing: Pick<Thing, 'kind' | 'id'>): string {
    return this.#briefAt(thing, Number.POSITIVE_INFINITY)
  }

  kindOfMark(id: string): string | undefined {
    return this.#marks.get(id)
  }

  asOf(n: number | null): ThingNames {
    const at = n ?? Number.NEGATIVE_INFINITY
    return {
      unit: this.unit,
      nameOf: (thing) => this.#nameAt(thing, at),
      briefNameOf: (thing) => this.#briefAt(thing, at),
      kindOfMark: (id) => this.kindOfMark(id),
      asOf: (other) => this.asOf(other),
    }
  }

  /** All that a thing goes by now, or went by when it went: its label, its words, and both as a history tells them. */
  allOf(thing: Pick<Thing, 'kind' | 'id'>): string[] {
    const { label, spans } = this.#naming(thing)
    const words = spans[0]?.words
    const name = told(thing.kind, label, words)
    return [label, name, calledOf(thing.kind, name), ...(words === undefined ? [] : [words])]
  }

  /**
   * Goes back before what a line did, and takes in what came or went and what was called otherwise. Lines are to be given
   * once, from the newest back.
   */
  goBack(changes: readonly Change[], n: number): void {
    this.learn(changes)
    for (const change of changes.toReversed()) this.#rename(change, n)
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

  #nameAt(thing: Pick<Thing, 'kind' | 'id'>, n: number): string {
    const { label, spans } = this.#naming(thing)
    return told(thing.kind, label, (spans.find(({ from }) => from <= n) ?? spans.at(-1))?.words)
  }

  #briefAt(thing: Pick<Thing, 'kind' | 'id'>, n: number): string {
    return thing.kind === 'mark' ? this.#naming(thing).label : this.#nameAt(thing, n)
  }

  #naming = (thing: Pick<Thing, 'kind' | 'id'>): Naming =>
    this.#known.get(keyOf(thing)) ?? namingOf(thing, {})

  #rename({ thing, verb, fields }: Change, n: number): void {
    const naming = this.#known.get(keyOf(thing))
    const field = verb === 'changed' || verb === 'moved' ? wordsFieldOf(thing.kind) : undefined
    const change = field === undefined ? undefined : fields.find((one) => one.field === field)
    const oldest = naming?.spans.at(-1)
    if (naming === undefined || change === undefined || oldest === undefined) return
    oldest.from = n
    naming.spans.push({ from: Number.NEGATIVE_INFINITY, words: wordsIn(change.before) })
  }

  #learn(thing: Pick<Thing, 'kind' | 'id'>, item: Fields): void {
    const key = keyOf(thing)
    if (!this.#known.has(key)) this.#known.set(key, namingOf(thing, item))
    if (thing.kind === 'mark' && typeof item['kind'] === 'string') this.#marks.set(thing.id, item['kind'])
  }
}

/** What tells a thing from all others of a job. */
export const keyOf = ({ kind, id }: Pick<Thing, 'kind' | 'id'>): string => `${kind} ${id}`
