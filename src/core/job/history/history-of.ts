import { calledOf, nameEdit } from '../edits/edit.ts'
import type { Job } from '../model/types.ts'
import type { Change } from './change.ts'
import { changesOf } from './changes-of.ts'
import { type Follower, follow } from './follow.ts'
import type { HistoryLine, Named } from './history-line.ts'
import { KnownNames } from './known-names.ts'
import { type SignedChange, signedIn } from './signed-in.ts'
import type { Subject } from './subject.ts'

/** What was done at one time, as far as it concerns what was asked for. */
export interface HistoryEntry {
  /** Number of the line; null: from before the history began, as the job itself says. */
  n: number | null
  /** When, ISO 8601; undefined where it is not known. */
  at?: string
  /** Who: the id of a person of the job, or a name; undefined where it is not known. */
  by?: string
  /** What it was called as undo names it; null where the job itself says what was done. */
  name: string | null
  undoes?: Named
  redoes?: Named
  changes: Change[]
}

/**
 * What a line did to what is followed; null where it does not concern it.
 * @param names of the things in the job after the newest line; every line that is read is to be given, from the newest back
 */
export function entryOf(
  line: HistoryLine,
  follower: Pick<Follower, 'take'>,
  names: KnownNames,
): HistoryEntry | null {
  const taken = follower.take(line)
  // Also what is not told is to be known as it was before.
  names.goBack(changesOf(line), line.n)
  if (taken.length === 0) return null
  const changes = names.withEvidence(taken)
  const { n, at, by, undoes, redoes } = line
  return {
    n,
    at,
    by,
    name: nameOf(line, names),
    ...(undoes === undefined ? {} : { undoes }),
    ...(redoes === undefined ? {} : { redoes }),
    changes,
  }
}

function nameOf({ n, edit, back, undoes, redoes }: HistoryLine, names: KnownNames): string {
  if (undoes !== undefined) return `undo ${undoes.name}`
  if (redoes !== undefined) return `redo ${redoes.name}`
  const then = names.asOf(n)
  return nameEdit(edit, (kind, id) => calledOf(kind, then.briefNameOf({ kind, id })), back)
}

/** What was done before the history began, newest first, what bears no date last; what was done together as one. */
export function entriesBefore(began: Job, follower: Pick<Follower, 'isAbout'>): HistoryEntry[] {
  const concerned = signedIn(began).filter(({ change, by }) => follower.isAbout(change.thing, by))
  const entries = new Map<string, HistoryEntry>()
  for (const { change, by, at } of concerned) {
    const key = JSON.stringify([by, at])
    const entry = entries.get(key)
    if (entry === undefined)
      entries.set(key, { n: null, ...known({ by, at }), name: null, changes: [change] })
    else entry.changes.push(change)
  }
  return [...entries.values()].sort((a, b) => (b.at ?? '').localeCompare(a.at ?? ''))
}

const known = ({ by, at }: Pick<SignedChange, 'by' | 'at'>): Pick<HistoryEntry, 'by' | 'at'> => ({
  ...(by === undefined ? {} : { by }),
  ...(at === undefined ? {} : { at }),
})

/**
 * The history of one thing: what was done to it, newest first, back to before the history began as far as the job said
 * so then. A dimension is followed through its names, with its evidence, its adoption and the marks that its evidence
 * is scaled from; a view with the sizes known in it; a person with all that they did.
 *
 * @param lines of the history, newest first
 * @param job as it stands after the newest line
 * @param began the job as it stood before the oldest line
 * @param names learns what those are called that are gone
 */
export function historyOf(
  lines: Iterable<HistoryLine>,
  subject: Subject,
  job: Job,
  began: Job,
  names = new KnownNames(job),
): HistoryEntry[] {
  const follower = follow(subject, job)
  const entries: HistoryEntry[] = []
  for (const line of lines) {
    const entry = entryOf(line, follower, names)
    if (entry !== null) entries.push(entry)
  }
  return [...entries, ...entriesBefore(began, follower)]
}
