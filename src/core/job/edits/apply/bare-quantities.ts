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

/**
 * Refuses another unit for a job while a quantity in it is written without one, for that would mean another size.
 *
 * @param job the job with its new unit
 * @param before the unit it had
 * @throws JobError that names the first such quantity and says how many there are
 */
export function checkUnitChange(job: Job, before: Unit): void {
  if (job.unit === before) return
  const { gauge } = job
  const bare: { where: string; text: string }[] = []
  QUANTITIES.each(job, (text, { as }, at) => {
    if ((kindAround(at) ?? 'length') !== 'length') return
    const was = sizes(text, as, { unit: before, gauge })
    if (was !== sizes(text, as, { unit: job.unit, gauge })) bare.push({ where: place(job, at.path), text })
  })
  const [first] = bare
  if (first === undefined) return
  throw new JobError(reason('job.bare-quantities', { before, after: job.unit, ...first, count: bare.length }))
}
