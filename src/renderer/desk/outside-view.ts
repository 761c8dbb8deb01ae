import type { View } from '../../core/job/types.ts'
import type { Picks } from '../picking/picks.ts'
import { isInside } from './views-at.ts'

/** Whether some new pick lies outside the outline of a view. */
export function outsideView(view: View, picks: Picks): boolean {
  const { outline } = view
  if (outline === undefined) return false
  return picks.features.some(
    (feature) => 'pixels' in feature && feature.pixels.some((pixel) => !isInside(outline, pixel)),
  )
}
