import type { Calibration } from '../../calibration/calibrate.ts'
import { isLength } from '../../calibration/stretch.ts'
import { reason } from '../../words/core-words.ts'
import type { AnyReason } from '../../words/reason.ts'

/** What the drawn scale and the scan's dpi together say of a scale: known to a tenth at best. */
export type CoarseCheck = 'agrees' | 'contradicts' | 'none'

/**
 * Why nothing checks the scale of a view, so that a misread figure in it would not show; undefined where something does.
 * @param odd whether the other views of its sheet tell otherwise how the paper is stretched
 */
export function uncheckedScale(
  { dof, used, closings, view }: Calibration,
  coarse: CoarseCheck,
  odd: boolean,
): AnyReason | undefined {
  if (dof > 0) return undefined
  if (odd) return reason('unchecked.others-tell-otherwise')
  const sizes = new Set(used.filter(isLength).map(({ reference }) => reference)).size
  if (sizes === 1 && closings.length === 0) return reason('unchecked.one-size', { coarse })
  if (closings.length > 0) return reason('unchecked.figures-alone', { coarse })
  return reason('unchecked.no-more-than-needed', { mapping: view.mapping.kind, coarse })
}
