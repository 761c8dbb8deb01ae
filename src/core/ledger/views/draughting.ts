import type { Sheet, Unit, View } from '../../job/model/types.ts'
import { parseLength } from '../../quantity/parse/parse-length.ts'
import { reason } from '../../words/core-words.ts'
import type { AnyReason } from '../../words/reason.ts'
import type { CoarseCheck } from './unchecked-scale.ts'

/** Plotting accuracy of 0.25 mm at 95 %. Common practice, no source. */
const DEFAULT_DRAUGHTING_MM = 0.13

/** Taken where neither the sheet's dpi nor the view's drawn scale is known; the table then says so. */
const ASSUMED_DPI = 300

/** Paper shrinks by a few parts in a hundred at most; a larger difference of scale has another reason. */
const SHRINKS_AT_MOST = 0.1

/** The draughting error of a view. */
export interface Draughting {
  /** Standard, mm in true size. */
  mm: number
  /** When something had to be assumed or does not fit. */
  caution?: AnyReason
  /** What the drawn scale and the scan's dpi say of the scale. */
  coarse: CoarseCheck
}

/**
 * The draughting error in true size: what it is on paper, over the scale of the drawing. The scale as stated is that
 * of the draughtsman's own sheet; by the scan's dpi it is that of the copy that was scanned. Where they contradict
 * each other the larger error is taken.
 * @param unit of a bare number
 * @param mmPerPixel of the view, as far as known from its references
 */
export function draughtingInTrue(
  unit: Unit,
  view: View,
  sheet: Sheet | undefined,
  mmPerPixel: number,
): Draughting {
  const stated = sheet?.draughting
  const paper = stated === undefined ? DEFAULT_DRAUGHTING_MM : Number(parseLength(stated, { unit }).mm)
  const dpi = sheet?.scan.dpi
  const byDpi = (paper * mmPerPixel * (dpi ?? ASSUMED_DPI)) / 25.4
  if (view.drawnScale === undefined) {
    if (dpi !== undefined || paper === 0) return { mm: byDpi, coarse: 'none' }
    const caution = reason('caution.scale-not-known', { view: view.name, dpi: ASSUMED_DPI })
    return { mm: byDpi, caution, coarse: 'none' }
  }
  const byScale = paper / view.drawnScale
  if (dpi === undefined) return { mm: byScale, coarse: 'none' }
  const found = 25.4 / (dpi * mmPerPixel)
  if (Math.abs(found / view.drawnScale - 1) <= SHRINKS_AT_MOST) return { mm: byScale, coarse: 'agrees' }
  return {
    mm: Math.max(byScale, byDpi),
    coarse: 'contradicts',
    caution: reason('caution.scale-contradicts-dpi', { view: view.name, stated: view.drawnScale, found }),
  }
}
