import { uncertainStretch } from '../../calibration/stretch.ts'
import type { View } from '../../job/model/types.ts'
import { expand } from '../../uncertainty/coverage.ts'
import { reason } from '../../words/core-words.ts'
import { nameItemsIn } from '../../words/name-in.ts'
import type { AnyReason } from '../../words/reason.ts'
import type { CalibratedView, StretchUse } from '../views/calibrate-view.ts'
import { isSeldom, paperOf } from '../views/paper.ts'

/** How a view comes by the stretch of its sheet, in words. */
export function stretchReason(use: Exclude<StretchUse, { by: 'itself' }>): AnyReason {
  const { U } = expand(use.stretch)
  return use.by === 'paper'
    ? reason('stretch.by-paper', { U })
    : reason('stretch.by-views', { views: use.names, own: use.own, stretch: use.stretch.value, U })
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

/**
 * That paper seldom stretches as a view has it, which known sizes misread alike would explain as well; null where it is
 * no wonder, and where the sheet is skewed or tilted by its mapping.
 */
export function unlikelyStretch({ view, sheet, calibration, stretched }: CalibratedView): AnyReason | null {
  if (calibration === null || sheet === undefined || calibration.view.mapping.kind !== 'two-axis') return null
  // What was lent is for those to answer for that lend it.
  if (stretched?.by === 'paper' || (stretched?.by === 'views' && !stretched.own)) return null
  const stretch = uncertainStretch(calibration.view.mapping, calibration.theta)
  const { u, U } = expand(stretch)
  const paper = paperOf(sheet)
  if (!isSeldom(stretch.value, u, sheet)) return null
  const setAside = calibration.references.filter((r) => r.setAside).map(({ id }) => id)
  return nameItemsIn(
    reason('stretch.unlikely', { stretch: stretch.value, U, paper, setAside: [...new Set(setAside)] }),
    view.references,
  )
}
