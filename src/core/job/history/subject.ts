import { withPresentWords } from '../ids/former-labels.ts'
import { called, labelOf } from '../ids/label.ts'
import { inOneCase, ownWords } from '../ids/thing-called.ts'
import { ITEM_KINDS, ITEM_WORDS } from '../model/item-kinds.ts'
import type { ItemKind } from '../model/meaning.ts'
import type { Job } from '../model/types.ts'
import type { Change } from './change.ts'
import type { Fields } from './changed-fields.ts'
import { changesOf } from './changes-of.ts'
import type { HistoryLine } from './history-line.ts'
import { type KnownNames, keyOf, RENAMING, wordsFieldOf, wordsIn } from './known-names.ts'

/** What a history is asked for: a thing of one of the lists of a job. */
export interface Subject {
  kind: ItemKind
  /** Its id, or the name of a dimension: the present one, or of what is gone the last. */
  id: string
  /** Of what is gone: the number of the line that took it away. What was called so later is something else. */
  until?: number
  /** The id of what alone is asked for within it: of evidence of a dimension, of a figured size of a view. */
  part?: string
}

/** The things of a job that go by a text: by id or name just as it is, else by what people call them, else parts of them. */
export function subjectsCalled(job: Job, called: string, names: KnownNames): Subject[] {
  const all = ITEM_WORDS.flatMap((kind) => {
    const { list, key } = ITEM_KINDS[kind]
    return job[list].map((item: object) => {
      const fields = item as Fields
      return { subject: { kind, id: String(fields[key]) } as Subject, fields }
    })
  })
  const exact = all.filter(({ subject }) => subject.id === called)
  if (exact.length > 0) return exact.map(({ subject }) => subject)
  const wanted = asked(called)
  const found = all.filter(({ subject, fields }) => {
    const words = ownWords({ ...fields, id: subject.id })
    return [
      subject.id,
      labelOf({ ...fields, id: subject.id }),
      ...names.allOf(subject),
      ...words,
      ...[subject.id, ...words].map((one) => `${subject.kind} ${one}`),
    ]
      .map(asked)
      .includes(wanted)
  })
  return found.length > 0 ? found.map(({ subject }) => subject) : partsCalled(job, wanted)
}

/** A text as it is compared with what things go by: in one case, whichever quotes stand in it or none. */
const asked = (text: string): string => inOneCase(text.replace(/["“”]/g, ''))

interface Part {
  subject: Subject
  /** What it is called alone. */
  label: string
  /** What that is called which it is a part of. */
  holders: string[]
}

function* partsOf({ dimensions, views }: Job): Generator<Part> {
  for (const { name, label, evidence } of dimensions) {
    for (const one of evidence) {
      const subject: Subject = { kind: 'dimension', id: name, part: one.id }
      yield { subject, label: labelOf(one), holders: [name, `dimension ${name}`, label] }
    }
  }
  for (const view of views) {
    const { id, name } = view
    for (const one of view.references) {
      const subject: Subject = { kind: 'view', id, part: one.id }
      yield {
        subject,
        label: called('figured size', one),
        holders: [name, `view ${name}`, labelOf(view)],
      }
    }
  }
}

/** What is within a thing and goes by a text: `drum_length measured 1`, `measured 1 of drum_length`; its label alone. */
function partsCalled(job: Job, wanted: string): Subject[] {
  return [...partsOf(job)].flatMap((part) =>
    isAsked([...aloneIn(part), ...within(part, part.holders)], wanted) ? [part.subject] : [],
  )
}

/** Whether something goes by one of these names, or did as labels were before. */
function isAsked(names: readonly string[], wanted: string): boolean {
  const are = names.map(asked)
  return are.includes(wanted) || are.includes(withPresentWords(wanted))
}

const aloneIn = ({ subject, label }: Part): string[] => [label, subject.part ?? '']

/** What a part is called by what holds it. */
const within = (part: Part, holders: readonly string[]): string[] =>
  holders.flatMap((holder) => aloneIn(part).flatMap((one) => [`${holder} ${one}`, `${one} of ${holder}`]))

/** How people ask for a part of something, so that it alone is meant: `drum_length measured 1`. */
export function partInWords(job: Job, { kind, id, part }: Subject): string | null {
  for (const { subject, label, holders } of partsOf(job)) {
    if (subject.kind === kind && subject.id === id && subject.part === part) return `${holders[0]} ${label}`
  }
  return null
}

/**
 * Looks for something that once went by a text, in a history that is read from its newest line back: a dimension by a
 * former name, a view, sheet, person, instrument or mark by what it was called, parts of these, or what is gone.
 */
export class FormerSubject {
  /** Of these at least one stands in each line that matters, as JSON has them. */
  readonly pieces: ReadonlySet<string>
  readonly #called: string
  readonly #names: KnownNames
  readonly #job: Job
  /** The number of the line that took away what is gone, as far back as was read. */
  readonly #removed = new Map<string, number>()
  /** What each name of a dimension stood for, as far back as was read; null: for none. */
  readonly #dimensions: Map<string, Subject | null>

  constructor(job: Job, called: string, names: KnownNames) {
    this.#job = job
    this.#called = asked(called)
    this.#names = names
    this.pieces = new Set([
      '"rename-dimension"',
      '"add-dimension"',
      '"remove-',
      // Of whatever case it was written in, the text itself can't be looked for.
      ...RENAMING,
      '"label"',
    ])
    this.#dimensions = new Map(job.dimensions.map(({ name }) => [name, { kind: 'dimension', id: name }]))
  }

  /** What is looked for, where a line shows that it went by that. */
  take(line: HistoryLine): Subject | null {
    for (const change of changesOf(line).toReversed()) {
      const found =
        change.thing.kind === 'dimension' ? this.#dimension(change, line) : this.#other(change, line)
      if (found !== null) return found
    }
    return null
  }

  #other({ thing, verb, fields }: Change, { n }: HistoryLine): Subject | null {
    const { kind, id } = thing
    if (kind === 'evidence' || kind === 'reference' || kind === 'job') return null
    if (verb === 'removed') {
      const key = keyOf(thing)
      if (!this.#removed.has(key)) this.#removed.set(key, n)
      const isIt = [id, ...this.#names.allOf(thing)].map(asked).includes(this.#called)
      return isIt ? { kind, id, until: n } : null
    }
    const field = verb === 'changed' || verb === 'moved' ? wordsFieldOf(kind) : undefined
    const words = wordsIn(fields.find((one) => one.field === field)?.before)
    return words === undefined ? null : this.#wentBy({ kind, id }, words)
  }

  /** Something that is still there, or is gone, or a part of it, where that went by these words. */
  #wentBy(thing: Pick<Subject, 'kind' | 'id'>, words: string): Subject | null {
    const { kind, id } = thing
    const until = this.#isThere(thing) ? undefined : this.#removed.get(keyOf(thing))
    if ([words, `${kind} ${words}`].map(asked).includes(this.#called))
      return until === undefined ? { kind, id } : { kind, id, until }
    return this.#partBy(thing, words)
  }

  /** The part of something that is still there which went by these words of the whole. */
  #partBy({ kind, id }: Pick<Subject, 'kind' | 'id'>, words: string): Subject | null {
    for (const part of partsOf(this.#job)) {
      const { subject } = part
      if (subject.kind !== kind || subject.id !== id) continue
      if (isAsked(within(part, [words, `${kind} ${words}`]), this.#called)) return subject
    }
    return null
  }

  #isThere = ({ kind, id }: Pick<Subject, 'kind' | 'id'>): boolean => {
    const { list, key } = ITEM_KINDS[kind]
    return this.#job[list].some((item: object) => (item as Fields)[key] === id)
  }

  #dimension({ thing: { id }, verb, fields }: Change, { n, undoes, redoes }: HistoryLine): Subject | null {
    const stands = this.#dimensions.get(id) ?? null
    if (verb === 'removed' && stands === null) {
      const gone: Subject = { kind: 'dimension', id, until: n }
      this.#dimensions.set(id, gone)
      return [id, `dimension ${id}`].map(asked).includes(this.#called) ? gone : null
    }
    if (verb === 'added' && undoes === undefined && redoes === undefined) this.#dimensions.set(id, null)
    if (verb !== 'renamed') return null
    const before = String(fields.find(({ field }) => field === 'name')?.before)
    this.#dimensions.set(id, null)
    this.#dimensions.set(before, stands)
    if (stands === null) return null
    if ([before, `dimension ${before}`].map(asked).includes(this.#called)) return stands
    return stands.until === undefined ? this.#partBy(stands, before) : null
  }
}
