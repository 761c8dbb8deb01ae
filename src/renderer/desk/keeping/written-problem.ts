import { lengthContext } from '../../../core/job/model/length-context.ts'
import type { Job, Unit } from '../../../core/job/model/types.ts'
import { lengthIn } from '../../../core/quantity/length.ts'
import { parseDrawnScale } from '../../../core/quantity/parse/parse-drawn-scale.ts'
import { parseLength } from '../../../core/quantity/parse/parse-length.ts'
import { refusalOf } from '../../bench/refusal.ts'

/** Why a text can't be read as a length in a job, in a sentence; empty when it can, or when nothing is written. */
export function lengthProblem(job: Job, text: string): string {
  return text.trim() === '' ? '' : refusalOf(() => parseLength(text, lengthContext(job)))
}

/** As `lengthProblem`, for a size: nothing is no size. */
export function sizeProblem(job: Job, text: string): string {
  const problem = lengthProblem(job, text)
  if (problem !== '' || text.trim() === '') return problem
  return lengthIn(parseLength(text, lengthContext(job)), 'mm') > 0 ? '' : 'A size is more than nothing.'
}

/** Why a stated scale can't be read, in a sentence; empty when it can, or when none is written. */
export function scaleProblem(text: string, unit: Unit): string {
  return text.trim() === '' ? '' : refusalOf(() => parseDrawnScale(text, unit))
}
