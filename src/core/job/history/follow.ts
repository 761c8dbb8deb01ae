import { inOneCase } from '../ids/thing-called.ts'
import type { Job } from '../model/types.ts'
import type { Change, Thing } from './change.ts'
import { type Fields, isSame } from './changed-fields.ts'
import { changesOf } from './changes-of.ts'
import type { HistoryLine } from './history-line.ts'
import { RENAMING } from './known-names.ts'
import type { Subject } from './subject.ts'

/** Follows something through a history that is read from its newest line back. */
export interface Follower {
  /**
   * Pieces of text of which at least one stands in every line that concerns it, as JSON has them; there may be more
   * after each line. null: it can be any line.
   */
  readonly pieces: ReadonlySet<string> | null
  /** What a line did to it: nothing where the line does not concern it. */
  take(line: HistoryLine): Change[]
  /** Whether something is it, belongs to it or was done by it, as far back as was read. */
  isAbout(thing: Thing, by?: string): boolean
}

/** Everything that happened to an item, or to a view and the sizes known in it. */
class ItemFollower implements Follower {
  readonly pieces: ReadonlySet<string>
  readonly #subject: Subject

  constructor(subject: Subject) {
    this.#subject = subject
    this.pieces = new Set([JSON.stringify(subject.id), ...RENAMING])
  }

  take(line: HistoryLine): Change[] {
    const { until = line.n } = this.#subject
    return line.n > until ? [] : changesOf(line).filter(({ thing }) => this.isAbout(thing))
  }

  isAbout(thing: Thing): boolean {
    const { kind, id } = this.#subject
    if (thing.kind === 'reference') return kind === 'view' && thing.of === id
    return thing.kind === kind && thing.id === id
  }
}

/** Everything that somebody did, and what was done to what the job says of them. */
class PersonFollower implements Follower {
  readonly pieces = null
  readonly #themselves: ItemFollower
  readonly #called: Set<string>

  constructor(subject: Subject, name: string | undefined) {
    this.#themselves = new ItemFollower(subject)
    this.#called = new Set([subject.id, name ?? subject.id].map(inOneCase))
  }

  take(line: HistoryLine): Change[] {
    const themselves = this.#themselves.take(line)
    const all = this.#did(line.by) ? changesOf(line) : themselves
    for (const { fields } of themselves) {
      const before = fields.find(({ field }) => field === 'name')?.before
      if (typeof before === 'string') this.#called.add(inOneCase(before))
    }
    return all
  }

  isAbout = (thing: Thing, by?: string): boolean => this.#themselves.isAbout(thing) || this.#did(by)

  #did = (by: string | undefined): boolean => by !== undefined && this.#called.has(inOneCase(by))
}

/**
 * Everything that happened to a dimension: its own fields, its evidence, its adoption, and the marks that its evidence
 * is scaled from, from when they were picked. Before a line that renamed it, it goes by the name that it had.
 */
class DimensionFollower implements Follower {
  readonly pieces = new Set<string>(RENAMING)
  /** undefined: it was not there yet. */
  #name: string | undefined
  readonly #until: number
  readonly #marks = new Set<string>()
  /** While it was gone: what it was, as it was taken away and brought back. */
  #gone: Fields | undefined

  constructor({ id, until }: Subject, job: Job) {
    this.#until = until ?? Number.POSITIVE_INFINITY
    this.#goBy(id)
    if (until !== undefined) return
    for (const one of job.dimensions.find(({ name }) => name === id)?.evidence ?? []) {
      if (one.basis === 'scaled') this.#restOn(one.marks)
    }
  }

  take(line: HistoryLine): Change[] {
    if (line.n > this.#until) return []
    const changes = changesOf(line)
    const its = new Set<Change>()
    for (const change of changes.toReversed()) {
      if (!this.#isItsOwn(change.thing) || this.#isOfAnother(change)) continue
      its.add(change)
      this.#restOn(marksIn(change))
      this.#goBack(change, line)
    }
    // Only now are the marks known: in an edit that takes evidence away with its marks, those may come first.
    return changes.filter((change) => its.has(change) || this.#isItsMark(change.thing))
  }

  isAbout = (thing: Thing): boolean => this.#isItsOwn(thing) || this.#isItsMark(thing)

  #isItsOwn({ kind, id, of }: Thing): boolean {
    if (this.#name === undefined) return false
    return kind === 'dimension' ? id === this.#name : kind === 'evidence' && of === this.#name
  }

  #isItsMark = ({ kind, id }: Thing): boolean => kind === 'mark' && this.#marks.has(id)

  /**
   * Before it came in, whatever had its name was another. What an undo or redo brings back was there before, up to the
   * edit that took it away; what had its name meanwhile was another too.
   */
  #goBack({ thing, verb, fields }: Change, { undoes, redoes }: HistoryLine): void {
    const before = fields.find(({ field }) => field === 'name')?.before
    if (verb === 'renamed' && typeof before === 'string') this.#goBy(before)
    if (thing.kind !== 'dimension' || verb !== 'added') return
    if (undoes === undefined && redoes === undefined) this.#name = undefined
    else this.#gone = asItWas(fields, 'after')
  }

  /** Whether something happened while it was gone, so that its name was another's. */
  #isOfAnother({ thing, verb, fields }: Change): boolean {
    if (this.#gone === undefined) return false
    const isTakenAway = thing.kind === 'dimension' && verb === 'removed'
    if (!isTakenAway || !isSame(asItWas(fields, 'before'), this.#gone)) return true
    this.#gone = undefined
    return false
  }

  #goBy(name: string): void {
    this.#name = name
    this.pieces.add(JSON.stringify(name))
  }

  #restOn(marks: readonly string[]): void {
    for (const mark of marks) {
      this.#marks.add(mark)
      this.pieces.add(JSON.stringify(mark))
    }
  }
}

/** All that an item held that came or went. */
const asItWas = (fields: Change['fields'], when: 'before' | 'after'): Fields =>
  Object.fromEntries(fields.map((one) => [one.field, one[when]]))

/** The marks that evidence rests on or rested on, as a change of it says. */
function marksIn({ thing, fields }: Change): string[] {
  if (thing.kind !== 'evidence') return []
  return fields
    .filter(({ field }) => field === 'marks')
    .flatMap(({ before, after }) => [before, after])
    .flatMap((marks) => (Array.isArray(marks) ? marks.map(String) : []))
}

/** What happened to one part of a thing, with the marks that evidence is scaled from and its adoption. */
class PartFollower implements Follower {
  readonly #whole: Follower
  readonly #part: string
  readonly #marks: Set<string>

  constructor(whole: Follower, part: string, marks: readonly string[]) {
    this.#whole = whole
    this.#part = part
    this.#marks = new Set(marks)
  }

  get pieces(): ReadonlySet<string> | null {
    return this.#whole.pieces
  }

  take(line: HistoryLine): Change[] {
    const changes = this.#whole.take(line)
    for (const change of changes) {
      if (this.#isPart(change.thing)) for (const mark of marksIn(change)) this.#marks.add(mark)
    }
    return changes.filter(
      (change) => this.#isPart(change.thing) || this.#isMark(change.thing) || this.#adopts(change),
    )
  }

  isAbout = (thing: Thing, by?: string): boolean =>
    (this.#isPart(thing) || this.#isMark(thing)) && this.#whole.isAbout(thing, by)

  #isPart = ({ kind, id }: Thing): boolean =>
    (kind === 'evidence' || kind === 'reference') && id === this.#part

  #isMark = ({ kind, id }: Thing): boolean => kind === 'mark' && this.#marks.has(id)

  #adopts = ({ verb, fields }: Change): boolean =>
    verb === 'adopted' &&
    fields.some((one) => one.field === 'adopt' && (one.before === this.#part || one.after === this.#part))
}

/** The marks that a piece of evidence of a dimension is scaled from. */
function marksOf({ dimensions }: Job, dimension: string, evidence: string): readonly string[] {
  const one = dimensions.find(({ name }) => name === dimension)?.evidence.find(({ id }) => id === evidence)
  return one?.basis === 'scaled' ? one.marks : []
}

/**
 * Follows something through the history of a job; lines are to be given to it from the newest back.
 * @param job as it stands after the newest line
 */
export function follow(subject: Subject, job: Job): Follower {
  const { kind, id, part } = subject
  const whole = followWhole(subject, job)
  return part === undefined
    ? whole
    : new PartFollower(whole, part, kind === 'dimension' ? marksOf(job, id, part) : [])
}

function followWhole(subject: Subject, job: Job): Follower {
  switch (subject.kind) {
    case 'dimension':
      return new DimensionFollower(subject, job)
    case 'person':
      return new PersonFollower(subject, job.people.find(({ id }) => id === subject.id)?.name)
    default:
      return new ItemFollower(subject)
  }
}
