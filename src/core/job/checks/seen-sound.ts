import { activeFormulas, evaluationOrder, usesOf } from '../../formula/evaluation-order.ts'
import { indexOf } from '../lookup/index-of.ts'
import { ITEM_KINDS, isList } from '../model/item-kinds.ts'
import { newJob } from '../model/new-job.ts'
import type { Dimension, Job } from '../model/types.ts'
import { JobError } from '../text/job-error.ts'
import type { CheckContext } from './check-context.ts'
import { checkFormulas } from './check-formulas.ts'
import { checkThings } from './check-job.ts'
import type { JobChange } from './job-change.ts'
import { leavesNamesBehind, touchedItems } from './touched-items.ts'

/** Whether a job says of itself what it said before, outside its lists. */
function saysTheSame({ before, after }: JobChange): boolean {
  const fields = Object.entries({ ...before, ...after }).filter(([field]) => !isList(field))
  return fields.every(([field, value]) => before[field as keyof Job] === value && field in after)
}

/** What is new or other in a job, and what it may matter to, as a job of its own. */
function excerptOf(change: JobChange): Job {
  const { title, unit, gauge } = change.after
  const empty = newJob(title, unit)
  const excerpt: Job = saysTheSame(change) ? { ...empty, gauge } : { ...change.after, ...listsOf(empty) }
  const taken = new Set<object>()
  const take = (list: object[], item: object): void => {
    if (!taken.has(item)) list.push(item)
    taken.add(item)
  }
  for (const { kind, is } of change.changes) if (is !== undefined) take(excerpt[ITEM_KINDS[kind].list], is)
  for (const { kind, item } of touchedItems(change)) take(excerpt[ITEM_KINDS[kind].list], item)
  return excerpt
}

const listsOf = ({ people, instruments, sheets, views, marks, dimensions, relations, notes }: Job) => ({
  people,
  instruments,
  sheets,
  views,
  marks,
  dimensions,
  relations,
  notes,
})

function sameFormulas(a: Dimension, b: Dimension): boolean {
  const [before, after] = [activeFormulas(a), activeFormulas(b)]
  return before.length === after.length && before.every((text, i) => text === after[i])
}

/**
 * The dimensions with other formulas, with all that their formulas use, as far as a circle may run through them: those that no
 * formula uses are in none.
 */
function mayBeInCircles({ before, items, changes }: JobChange): Dimension[] {
  const changed = changes.flatMap(({ kind, was, is }) =>
    kind !== 'dimension' || is === undefined || (was !== undefined && sameFormulas(was, is)) ? [] : [is],
  )
  const used = new Set(changed.flatMap(usesOf))
  const { holders } = indexOf(before, 'dimension')
  const found = new Set(
    changed.filter(({ name }) => used.has(name) || holders.of('in a formula', name).size > 0),
  )
  // A set is gone through to its end, also as it grows.
  for (const dimension of found) {
    for (const name of usesOf(dimension)) {
      const next = items.dimension.get(name)
      if (next !== undefined) found.add(next)
    }
  }
  return [...found]
}

function isSound(context: CheckContext, change: JobChange): boolean {
  try {
    checkThings(context)
    // The formulas can be read then, which those of a circle must be.
    return checkFormulas(context, []) === null && 'order' in evaluationOrder(mayBeInCircles(change))
  } catch (error) {
    if (error instanceof JobError) return false
    throw error
  }
}

/**
 * Whether a job is seen to be sound after an edit by looking at what the edit touched, which takes as long as that is
 * much. Where it is not, the job may be sound or not: `checkJob` tells.
 */
export function isSeenSound(change: JobChange): boolean {
  const { before, after, items } = change
  // Bare numbers and gauges mean something else then, wherever they are written.
  if (before.unit !== after.unit || before.gauge !== after.gauge) return false
  if (leavesNamesBehind(change)) return false
  return isSound({ job: excerptOf(change), items }, change)
}
