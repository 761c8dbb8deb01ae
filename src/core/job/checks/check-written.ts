import { NotationError } from '../../quantity/notation-error.ts'
import { parseAngle } from '../../quantity/parse-angle.ts'
import { parseArea } from '../../quantity/parse-area.ts'
import { parseCount } from '../../quantity/parse-count.ts'
import { parseLength } from '../../quantity/parse-length.ts'
import { parseAngleTolerance, parseTolerance } from '../../quantity/tolerance.ts'
import { lengthContext } from '../model/length-context.ts'
import type { Job } from '../model/types.ts'
import { JobError } from '../text/job-error.ts'
import { place } from '../text/place.ts'
import { quoted } from '../text/quoted.ts'
import { type CheckContext, refuse } from './check-context.ts'

/** How a quantity is written. A size is a length greater than nothing. */
export type WrittenAs =
  | 'length'
  | 'size'
  | 'angle'
  | 'area'
  | 'count'
  | 'length or angle'
  | 'signed length'
  | 'signed angle'
  | 'tolerance'
  | 'tolerance of an angle'

const NOUNS: Readonly<Record<WrittenAs, string>> = {
  length: 'a length',
  size: 'a length',
  'signed length': 'a length',
  angle: 'an angle',
  'signed angle': 'an angle',
  area: 'an area',
  count: 'a count',
  'length or angle': 'a length or an angle',
  tolerance: 'a tolerance',
  'tolerance of an angle': 'a tolerance of an angle',
}

/** Why a text can't be read as what it should be, in the notation's own words; null when it can. */
function readingProblem(job: Job, text: string, as: WrittenAs): string | null {
  try {
    switch (as) {
      case 'angle':
        parseAngle(text)
        break
      case 'signed angle':
        parseAngle(text, { signed: true })
        break
      case 'area':
        parseArea(text)
        break
      case 'count':
        parseCount(text)
        break
      case 'signed length':
        parseLength(text, { ...lengthContext(job), signed: true })
        break
      case 'tolerance':
        parseTolerance(text, { unit: job.unit })
        break
      case 'tolerance of an angle':
        parseAngleTolerance(text)
        break
      default:
        parseLength(text, lengthContext(job))
    }
    return null
  } catch (error) {
    if (!(error instanceof NotationError)) throw error
    return error.message
  }
}

/** Checks that a written quantity can be read as what it is; an absent one passes. */
export function checkWritten(
  { job }: CheckContext,
  path: readonly PropertyKey[],
  text: string | undefined,
  as: WrittenAs,
): void {
  if (text === undefined) return
  const problem = readingProblem(job, text, as)
  if (problem !== null) {
    if (as === 'length or angle' && readingProblem(job, text, 'angle') === null) return
    throw new JobError(`${place(job, path)} is not written as ${NOUNS[as]}. ${problem}`)
  }
  if (as !== 'size') return
  if (parseLength(text, lengthContext(job)).mm.compare(0) <= 0) {
    refuse(job, path, `is ${quoted(text)}, and must be greater than nothing`)
  }
}
