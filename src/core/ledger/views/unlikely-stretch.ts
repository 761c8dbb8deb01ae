import type { Calibration } from '../../calibration/calibrate.ts'
import { uncertainStretch } from '../../calibration/stretch.ts'
import { expand } from '../../uncertainty/coverage.ts'
import { reason } from '../../words/core-words.ts'
import type { AnyReason } from '../../words/reason.ts'
import { nameKnownSizes } from './name-known-sizes.ts'
import { isBeyondPaper, isSeldom, paperOf } from './paper.ts'
import type { PreparedView } from './prepare-view.ts'
import type { StretchUse } from './stretch-use.ts'

/** A stretch that paper seldom has, and whether it is so large that it puts the scale in doubt. */
export interface UnlikelyStretch {
  says: AnyReason
  grave: boolean
}

/**
 * That paper seldom stretches as a view has it, which known sizes misread alike would explain as well; null where it is
 * no wonder, and where the sheet is skewed or tilted by its mapping.
 */
export function unlikelyStretch(
  { view, sheet }: Pick<PreparedView, 'view' | 'sheet'>,
  calibration: Calibration,
  stretched: StretchUse | undefined,
): UnlikelyStretch | null {
  if (sheet === undefined || calibration.view.mapping.kind !== 'two-axis') return null
  // What was lent is for those to answer for that lend it.
  if (stretched?.by === 'paper' || (stretched?.by === 'views' && !stretched.own)) return null
  const stretch = uncertainStretch(calibration.view.mapping, calibration.theta)
  const { u, U } = expand(stretch)
  const paper = paperOf(sheet)
  if (!isSeldom(stretch.value, u, sheet)) return null
  const setAside = calibration.references.filter((r) => r.setAside).map(({ id }) => id)
  const says = reason('stretch.unlikely', {
    stretch: stretch.value,
    U,
    paper,
    setAside: [...new Set(setAside)],
  })
  return { says: nameKnownSizes(says, view.references), grave: isBeyondPaper(stretch.value, u, paper) }
}
