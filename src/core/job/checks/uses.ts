import { standsIn } from '../../formula/rename-in-formula.ts'
import { type CoreReason, reason } from '../../words/core-words.ts'
import { indexOf, isNamed } from '../lookup/index-of.ts'
import { ITEM_KINDS, ITEM_WORDS } from '../model/item-kinds.ts'
import type { ItemKind } from '../model/meaning.ts'
import { jobSchema } from '../model/schema.ts'
import type { Job } from '../model/types.ts'
import { type Whereabouts, walkMeanings } from '../model/walk-meanings.ts'
import { nameOrLabel } from '../names/called-of.ts'
import { place } from '../text/place.ts'

const USES = walkMeanings(jobSchema, 'reference', 'formula')

/** The path of the innermost thing with an id or a name of its own that something stands in. */
function holderPath({ path, holders }: Whereabouts): PropertyKey[] {
  let depth = holders.length - 1
  while (depth > 0 && !('id' in (holders[depth] ?? {})) && !('name' in (holders[depth] ?? {}))) depth--
  // Every holder but the job itself is an entry of a list: a field and a place in it.
  return path.slice(0, 2 * depth)
}

const isWithdrawn = ({ holders }: Whereabouts): boolean => {
  const holder = holders.at(-1)
  return holder !== undefined && 'withdrawn' in holder && holder.withdrawn !== undefined
}

/** Whether it is a person who is said to have entered themselves. */
const isThemselves = ({ path, holders }: Whereabouts, id: string): boolean =>
  path[0] === 'people' && (holders.at(-1) as { id?: unknown } | undefined)?.id === id

/** What people call the innermost thing on a path, and what it is in. */
function holderCalled(job: Job, path: readonly PropertyKey[]): string {
  const [list, index, ...within] = path
  const kind = ITEM_WORDS.find((one) => ITEM_KINDS[one].list === list)
  const item = kind && (job[ITEM_KINDS[kind].list] as readonly object[])[Number(index)]
  const name = kind === undefined || item === undefined ? null : nameOrLabel(kind, item)
  if (name === null) return place(job, path)
  return within.length === 0 ? name : `${place(item, within)} of ${name}`
}

/** The first use of an item in the whole of a job, as `problemOfUse` says it. */
export function firstUse(job: Job, kind: ItemKind, id: string, before: Job = job): CoreReason | null {
  const found: CoreReason[] = []
  const item = indexOf(before, kind).get(id)
  const called = item === undefined ? null : nameOrLabel(kind, item)
  USES.each(job, (text, meaning, at) => {
    if (found.length > 0) return
    const inFormula = meaning.is === 'formula'
    const uses = inFormula
      ? kind === 'dimension' && standsIn(text, id) && !isWithdrawn(at)
      : meaning.to === kind && text === id && !isThemselves(at, id)
    if (!uses) return
    const path = holderPath(at)
    const inEvidence = path.includes('evidence')
    const first = !inEvidence ? 'remove or change' : inFormula ? 'withdraw or change' : 'change'
    found.push(reason('job.in-use', { kind, id, called, by: holderCalled(job, path), first }))
  })
  return found[0] ?? null
}

/**
 * Why an item can't be removed while something refers to it; null when nothing does.
 * @param before a job that the item is still in, for what it is called
 */
export function problemOfUse(job: Job, kind: ItemKind, id: string, before: Job = job): CoreReason | null {
  const named = isNamed(job, kind, id) || (kind === 'dimension' && isNamed(job, 'in a formula', id))
  return named ? firstUse(job, kind, id, before) : null
}
