import { lengthContext } from '../../core/job/length-context.ts'
import type { Job } from '../../core/job/types.ts'
import { lengthIn } from '../../core/quantity/length.ts'
import { NotationError } from '../../core/quantity/notation-error.ts'
import { parseLength } from '../../core/quantity/parse-length.ts'

/** Why a text can't be read as a length in a job, in a sentence; empty when it can, or when nothing is written. */
export function lengthProblem(job: Job, text: string): string {
  if (text.trim() === '') return ''
  try {
    parseLength(text, lengthContext(job))
    return ''
  } catch (error) {
    if (error instanceof NotationError) return error.message
    throw error
  }
}

/** As `lengthProblem`, for a size: nothing is no size. */
export function sizeProblem(job: Job, text: string): string {
  const problem = lengthProblem(job, text)
  if (problem !== '' || text.trim() === '') return problem
  return lengthIn(parseLength(text, lengthContext(job)), 'mm') > 0 ? '' : 'A size is more than nothing.'
}
