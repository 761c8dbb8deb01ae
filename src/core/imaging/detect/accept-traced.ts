import { reason } from '../../words/core-words.ts'
import type { NoStrokeReason } from '../../words/strokes.ts'
import { type Acceptance, acceptStroke, type Demands } from '../accept/acceptance.ts'
import { isPaperBetween } from '../accept/paper-between.ts'
import type { Traced } from '../trace/trace-stroke.ts'
import { isReason, type SearchContext } from './detector.ts'

/** Whether what was traced is a stroke, and not the paper between two of them. @returns as `acceptStroke` */
export function acceptTraced(
  { grey, usualInk }: SearchContext,
  traced: Traced,
  demands: Demands,
): NoStrokeReason | Acceptance {
  const accepted = acceptStroke(traced, demands)
  if (isReason(accepted) || !isPaperBetween(grey, traced, usualInk)) return accepted
  return reason('stroke.paper-between')
}
