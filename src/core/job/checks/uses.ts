import { standsIn } from '../../formula/rename-in-formula.ts'
import { type CoreReason, reason } from '../../words/core-words.ts'
import { isNamed } from '../lookup/index-of.ts'
import type { ItemKind } from '../model/meaning.ts'
import { jobSchema } from '../model/schema.ts'
import type { Job } from '../model/types.ts'
import { type Whereabouts, walkMeanings } from '../model/walk-meanings.ts'
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

/** The first use of an item in the whole of a job, as `problemOfUse` says it. */
export function firstUse(job: Job, kind: ItemKind, id: string): CoreReason | null {
  const found: CoreReason[] = []
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
    found.push(reason('job.in-use', { kind, id, by: place(job, path), first }))
  })
  return found[0] ?? null
}

/** Why an item can't be removed while something refers to it; null when nothing does. */
export function problemOfUse(job: Job, kind: ItemKind, id: string): CoreReason | null {
  const named = isNamed(job, kind, id) || (kind === 'dimension' && isNamed(job, 'in a formula', id))
  return named ? firstUse(job, kind, id) : null
}
