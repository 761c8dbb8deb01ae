import type { Length } from '../../quantity/length.ts'
import { NotationError } from '../../quantity/notation-error.ts'
import { parseFigure } from '../../quantity/parse-figure.ts'
import { type LengthContext, parseLength } from '../../quantity/parse-length.ts'
import { parseTolerance } from '../../quantity/tolerance.ts'
import type { Dimension, Job, Unit } from '../model/types.ts'
import { JobError } from '../text/job-error.ts'
import { place } from '../text/place.ts'
import { quoted } from '../text/quoted.ts'

type Reading = (text: string, context: LengthContext) => (Length | undefined)[]

const asLength: Reading = (text, context) => [parseLength(text, { ...context, signed: true })]

const asTolerance: Reading = (text, context) => {
  const { plus, minus } = parseTolerance(text, context)
  return [plus, minus]
}

const asFigure: Reading = (text, context) => {
  const { length, tolerance } = parseFigure(text, context)
  return [length, tolerance?.plus, tolerance?.minus]
}

/** A quantity of a job: where it stands, as it is written, and how it is read. */
type Written = [path: PropertyKey[], text: string | undefined, reading: Reading]

function* writtenInDimension(dimension: Dimension, at: PropertyKey[]): Generator<Written> {
  if (dimension.kind !== 'length') return
  yield [[...at, 'tolerance'], dimension.tolerance, asTolerance]
  for (const [j, evidence] of dimension.evidence.entries()) {
    const path = [...at, 'evidence', j]
    if (evidence.basis === 'printed') {
      yield [[...path, 'text'], evidence.text, asFigure]
      for (const [k, { text }] of (evidence.candidates ?? []).entries()) {
        yield [[...path, 'candidates', k, 'text'], text, asFigure]
      }
    } else if (evidence.basis === 'found') {
      for (const [k, reading] of evidence.readings.entries()) {
        yield [[...path, 'readings', k], reading, asLength]
      }
      yield [[...path, 'worn', 'loss'], evidence.worn?.loss, asLength]
      yield [[...path, 'worn', 'u'], evidence.worn?.u, asLength]
    }
  }
}

/** Every quantity that may be a length, in the order of the document. */
function* written(job: Job): Generator<Written> {
  yield [['tolerance'], job.tolerance, asTolerance]
  for (const [i, { resolution, limit }] of job.instruments.entries()) {
    yield [['instruments', i, 'resolution'], resolution, asLength]
    yield [['instruments', i, 'limit'], limit, asLength]
  }
  for (const [i, { draughting }] of job.sheets.entries()) {
    yield [['sheets', i, 'draughting'], draughting, asLength]
  }
  for (const [i, view] of job.views.entries()) {
    for (const [j, reference] of view.references.entries()) {
      const path = ['views', i, 'references', j]
      yield [[...path, 'u'], reference.u, asLength]
      if (reference.kind === 'rectangle') {
        yield [[...path, 'width'], reference.width, asLength]
        yield [[...path, 'height'], reference.height, asLength]
      } else yield [[...path, 'size'], reference.size, asLength]
    }
  }
  for (const [i, dimension] of job.dimensions.entries()) {
    yield* writtenInDimension(dimension, ['dimensions', i])
  }
  for (const [i, { u }] of job.relations.entries()) yield [['relations', i, 'u'], u, asLength]
}

function sizes(text: string, reading: Reading, context: LengthContext): string {
  try {
    return reading(text, context)
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
  const bare: [PropertyKey[], string][] = []
  for (const [path, text, reading] of written(job)) {
    if (text === undefined) continue
    const was = sizes(text, reading, { unit: before, gauge })
    if (was !== sizes(text, reading, { unit: job.unit, gauge })) bare.push([path, text])
  }
  const [first] = bare
  if (first === undefined) return
  const [path, text] = first
  const many = bare.length === 1 ? 'is written without its unit' : 'and others are written without a unit'
  const count = bare.length === 1 ? '' : ` (${bare.length} in all)`
  throw new JobError(
    `The unit can't be changed from ${before} to ${job.unit}, because ${place(job, path)} ${quoted(text)} ${many}${count} and would mean another size: write their units first, as in ${quoted(`${text} ${before}`)}.`,
  )
}
