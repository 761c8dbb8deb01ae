import type { Calibration } from '../../calibration/calibrate.ts'
import { uncertainStretch } from '../../calibration/stretch.ts'
import { expand } from '../../uncertainty/coverage.ts'
import { reason } from '../../words/core-words.ts'
import type { AnyReason } from '../../words/reason.ts'
import { nameKnownSizes } from './name-known-sizes.ts'
import { isSeldom, paperOf } from './paper.ts'
import type { PreparedView } from './prepare-view.ts'
import type { StretchUse } from './stretch-use.ts'

/**
 * That paper seldom stretches as a view has it, which figured sizes misread alike would explain as well; null where it is
 * no wonder, and where the sheet is skewed or tilted by its mapping.
 */
export function unlikelyStretch(
  { view, sheet, stretch: own }: Pick<PreparedView, 'view' | 'sheet' | 'stretch'>,
  calibration: Calibration,
  stretched: StretchUse | undefined,
): AnyReason | null {
  if (sheet === undefined || calibration.view.mapping.kind !== 'two-axis') return null
  // What was lent is for those to answer for that lend it.
  if (stretched?.by === 'paper' || (stretched?.by === 'views' && !stretched.own)) return null
  // Beside others it answers for what its own figured sizes say, not for what these made of it.
  const all = uncertainStretch(calibration.view.mapping, calibration.theta)
  const stretch = stretched?.by === 'views' ? (own ?? all) : all
  const { u, U } = expand(stretch)
  const paper = paperOf(sheet)
  if (!isSeldom(stretch.value, u, paper)) return null
  const setAside = calibration.references.filter((r) => r.setAside).map(({ id }) => id)
  const says = reason('stretch.unlikely', {
    stretch: stretch.value,
    U,
    paper,
    setAside: [...new Set(setAside)],
  })
  return nameKnownSizes(says, view.references)
}
