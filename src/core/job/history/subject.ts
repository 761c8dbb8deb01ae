import { ITEM_KINDS, ITEM_WORDS } from '../model/item-kinds.ts'
import type { ItemKind } from '../model/meaning.ts'
import type { Job } from '../model/types.ts'
import type { Change } from './change.ts'
import type { Fields } from './changed-fields.ts'
import { changesOf } from './changes-of.ts'
import type { HistoryLine } from './history-line.ts'
import type { ThingNames } from './known-names.ts'

/** What a history is asked for: a thing of one of the lists of a job. */
export interface Subject {
  kind: ItemKind
  /** Its id, or the name of a dimension: the present one, or of what is gone the last. */
  id: string
  /** Of what is gone: the number of the line that took it away. What was called so later is something else. */
  until?: number
}

const inOneCase = (text: string): string => text.trim().toLowerCase()

/** The things of a job that go by a text: first by id or name just as it is, else by what people call them, whatever its case. */
export function subjectsCalled(job: Job, called: string, names: ThingNames): Subject[] {
  const all = ITEM_WORDS.flatMap((kind): Subject[] => {
    const { list, key } = ITEM_KINDS[kind]
    return job[list].map((item: object) => ({ kind, id: String((item as Fields)[key]) }))
  })
  const exact = all.filter(({ id }) => id === called)
  if (exact.length > 0) return exact
  const wanted = inOneCase(called)
  return all.filter((subject) => [subject.id, names.nameOf(subject)].map(inOneCase).includes(wanted))
}

/**
 * Looks for something that once went by a text, in a history that is read from its newest line back: a dimension by a
 * former name, or what is gone.
 */
export class FormerSubject {
  /** Of these at least one stands in each line that matters, as JSON has them. */
  readonly pieces: ReadonlySet<string>
  readonly #called: string
  readonly #names: ThingNames
  /** What each name of a dimension stood for, as far back as was read; null: for none. */
  readonly #dimensions: Map<string, Subject | null>

  constructor(job: Job, called: string, names: ThingNames) {
    this.#called = inOneCase(called)
    this.#names = names
    this.pieces = new Set([JSON.stringify(called), '"rename-dimension"', '"add-dimension"', '"remove-'])
    this.#dimensions = new Map(job.dimensions.map(({ name }) => [name, { kind: 'dimension', id: name }]))
  }

  /** What is looked for, where a line shows that it went by that. */
  take(line: HistoryLine): Subject | null {
    for (const change of changesOf(line).toReversed()) {
      const found =
        change.thing.kind === 'dimension' ? this.#dimension(change, line) : this.#gone(change, line)
      if (found !== null) return found
    }
    return null
  }

  #gone({ thing, verb }: Change, { n }: HistoryLine): Subject | null {
    const { kind, id } = thing
    if (verb !== 'removed' || kind === 'evidence' || kind === 'reference' || kind === 'job') return null
    const isIt = [id, this.#names.nameOf(thing)].map(inOneCase).includes(this.#called)
    return isIt ? { kind, id, until: n } : null
  }

  #dimension({ thing: { id }, verb, fields }: Change, { n, undoes, redoes }: HistoryLine): Subject | null {
    const stands = this.#dimensions.get(id) ?? null
    if (verb === 'removed' && stands === null) {
      const gone: Subject = { kind: 'dimension', id, until: n }
      this.#dimensions.set(id, gone)
      return inOneCase(id) === this.#called ? gone : null
    }
    if (verb === 'added' && undoes === undefined && redoes === undefined) this.#dimensions.set(id, null)
    if (verb !== 'renamed') return null
    const before = String(fields.find(({ field }) => field === 'name')?.before)
    this.#dimensions.set(id, null)
    this.#dimensions.set(before, stands)
    return inOneCase(before) === this.#called ? stands : null
  }
}
