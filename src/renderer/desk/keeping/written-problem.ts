import { lengthContext } from '../../../core/job/model/length-context.ts'
import type { Job, Unit } from '../../../core/job/model/types.ts'
import { lengthIn } from '../../../core/quantity/length.ts'
import { parseDrawnScale } from '../../../core/quantity/parse/parse-drawn-scale.ts'
import { type KnownSizeOf, parseKnownSize } from '../../../core/quantity/parse/parse-known-size.ts'
import { parseLength } from '../../../core/quantity/parse/parse-length.ts'
import type { AnyReason } from '../../../core/words/reason.ts'
import { refusalOf } from '../../words/refusal.ts'
import { reason } from '../../words/window-words.ts'

/** Why a text can't be read as a length in a job; null when it can, or when nothing is written. */
export function lengthProblem(job: Job, text: string): AnyReason | null {
  return text.trim() === '' ? null : refusalOf(() => parseLength(text, lengthContext(job)))
}

/** Why a text can't be read as a figured size of what it is of; null as for `lengthProblem`. Nothing is no size. */
export function sizeProblem(job: Job, text: string, of: KnownSizeOf): AnyReason | null {
  if (text.trim() === '') return null
  const read = () => parseKnownSize(text, of, lengthContext(job))
  const problem = refusalOf(read)
  if (problem !== null) return problem
  return lengthIn(read(), 'mm') > 0 ? null : reason('written.size-of-nothing')
}

/** Why a stated scale can't be read; null when it can, or when none is written. */
export function scaleProblem(text: string, unit: Unit): AnyReason | null {
  return text.trim() === '' ? null : refusalOf(() => parseDrawnScale(text, unit))
}
