import type { Calibration } from '../../calibration/calibrate.ts'
import { uncertainStretch } from '../../calibration/stretch.ts'
import type { View } from '../../job/model/types.ts'
import { expand } from '../../uncertainty/coverage.ts'
import { reason } from '../../words/core-words.ts'
import type { AnyReason } from '../../words/reason.ts'
import type { StretchUse } from '../views/stretch-use.ts'

/** How a view comes by the stretch of its sheet, and what it is with all that tells of it, in words. */
export function stretchReason(
  use: Exclude<StretchUse, { by: 'itself' }>,
  { view: { mapping }, theta }: Calibration,
): AnyReason {
  if (use.by === 'paper') return reason('stretch.by-paper', { U: expand(use.stretch).U })
  const stretch = uncertainStretch(mapping, theta)
  const { U } = expand(stretch)
  return reason('stretch.by-views', { views: use.names, own: use.own, stretch: stretch.value, U })
}

/** What is wrong with a view, and that its sheet is stretched otherwise by it than by the others. */
export function withOdd(
  { name }: View,
  use: StretchUse | undefined,
  problem: AnyReason | null,
): AnyReason | null {
  if (use?.by !== 'itself') return problem
  const { value } = use.stretch
  const { U } = expand(use.stretch)
  return reason('stretch.odd', { view: name, others: use.names, stretch: value, U, p: use.p, problem })
}
