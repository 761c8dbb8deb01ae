import { type KnownSizeOf, parseKnownSize } from '../../quantity/parse/parse-known-size.ts'
import type { QuantityKind } from '../../quantity/quantity-kind.ts'
import { reason } from '../../words/core-words.ts'
import type { NotationReason } from '../../words/notation.ts'
import { lengthContext } from '../model/length-context.ts'
import { jobSchema } from '../model/schema.ts'
import { type Whereabouts, walkMeanings } from '../model/walk-meanings.ts'
import { JobError } from '../text/job-error.ts'
import { whereIn } from '../text/whereabouts.ts'
import { type CheckContext, refuse } from './check-context.ts'
import { notationProblem } from './quantity-notation.ts'

const QUANTITIES = walkMeanings(jobSchema, 'quantity')

/** The kind of the dimension that something stands in; undefined outside dimensions. */
export const kindAround = ({ path, holders }: Whereabouts): QuantityKind | undefined =>
  path[0] === 'dimensions' ? (holders[1] as { kind: QuantityKind } | undefined)?.kind : undefined

/** What the figured size is of that something stands in; undefined elsewhere. */
const sizeAround = ({ path, holders }: Whereabouts): KnownSizeOf | undefined =>
  path[0] === 'views' ? (holders.at(-1) as { kind?: KnownSizeOf } | undefined)?.kind : undefined

/** A tolerance of nothing was taken once. A job that has one opens still, and its figures say what is wrong with it. */
const TAKEN_BEFORE: NotationReason['code'] = 'notation.tolerance-of-nothing'

/** Checks that every quantity can be read as what it is. */
export function checkQuantities({ job, kept = false }: CheckContext): void {
  QUANTITIES.each(job, (text, { as }, at) => {
    const size = sizeAround(at)
    const problem = notationProblem(text, as, { kind: kindAround(at), size }, job)
    if (problem !== null && kept && problem.error.advice.code === TAKEN_BEFORE) return
    if (problem !== null) {
      const { noun, error } = problem
      throw new JobError(
        reason('job.not-written-as', { ...whereIn(job, at.path), noun, problem: error.reason }),
      )
    }
    if (as === 'size' && parseKnownSize(text, size, lengthContext(job)).mm.compare(0) <= 0) {
      refuse(job, at.path, reason('job.nothing-or-less', { text }))
    }
  })
}
