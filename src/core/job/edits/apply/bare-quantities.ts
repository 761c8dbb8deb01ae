import type { Length } from '../../../quantity/length.ts'
import { NotationError } from '../../../quantity/notation/notation-error.ts'
import { parseFigure } from '../../../quantity/parse/parse-figure.ts'
import { parseKnownSize } from '../../../quantity/parse/parse-known-size.ts'
import { type LengthContext, parseLength } from '../../../quantity/parse/parse-length.ts'
import { parseTolerance } from '../../../quantity/parse/parse-tolerance.ts'
import { reason } from '../../../words/core-words.ts'
import { kindAround } from '../../checks/check-quantities.ts'
import type { QuantityMeaning } from '../../model/meaning.ts'
import { jobSchema } from '../../model/schema.ts'
import type { Job, Unit } from '../../model/types.ts'
import { walkMeanings } from '../../model/walk-meanings.ts'
import { JobError } from '../../text/job-error.ts'
import { place } from '../../text/place.ts'

const QUANTITIES = walkMeanings(jobSchema, 'quantity')

/** The lengths in a text, by what it is written as. @throws NotationError where it is no length */
function lengthsIn(text: string, as: QuantityMeaning, context: LengthContext): (Length | undefined)[] {
  switch (as) {
    case 'figure': {
      const { length, tolerance } = parseFigure(text, context)
      return [length, tolerance?.plus, tolerance?.minus]
    }
    case 'tolerance':
    case 'tolerance of the dimension': {
      const { plus, minus } = parseTolerance(text, context)
      return [plus, minus]
    }
    case 'size':
      return [parseKnownSize(text, undefined, context)]
    default:
      return [parseLength(text, { ...context, signed: true })]
  }
}

function sizes(text: string, as: QuantityMeaning, context: LengthContext): string {
  try {
    return lengthsIn(text, as, context)
      .map((length) => length?.mm.toFraction() ?? '')
      .join(' ')
  } catch (error) {
    // What can't be read as a length in any unit (an angle, a figure that is illegible) is not changed by one.
    if (error instanceof NotationError) return ''
    throw error
  }
}

/** The quantities of a job that would be other sizes in the other unit. */
function bareIn(job: Job, units: readonly [Unit, Unit]): { where: string; text: string }[] {
  const { gauge } = job
  const found: { where: string; text: string }[] = []
  QUANTITIES.each(job, (text, { as }, at) => {
    if ((kindAround(at) ?? 'length') !== 'length') return
    const [one, other] = units.map((unit) => sizes(text, as, { unit, gauge }))
    if (one !== other) found.push({ where: place(job, at.path), text })
  })
  return found
}

/**
 * Refuses another unit for a job while a quantity in it is written without one, for that would mean another size. What
 * one act writes anew together with the unit is meant in that unit; so only texts that stood in the job before count,
 * and the act can be taken back whenever it could be done.
 *
 * @throws JobError that names the first such quantity and says how many there are
 */
export function checkUnitChange(before: Job, after: Job): void {
  if (after.unit === before.unit) return
  const units = [before.unit, after.unit] as const
  const written = bareIn(after, units)
  if (written.length === 0) return
  const stood = new Set(bareIn(before, units).map(({ text }) => text))
  const bare = written.filter(({ text }) => stood.has(text))
  const [first] = bare
  if (first === undefined) return
  throw new JobError(
    reason('job.bare-quantities', { before: before.unit, after: after.unit, ...first, count: bare.length }),
  )
}
