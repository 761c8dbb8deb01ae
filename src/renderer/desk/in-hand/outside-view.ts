import type { Mark, View } from '../../../core/job/model/types.ts'
import type { Picks } from '../../picking/picks.ts'
import { placesOf } from './places-of.ts'
import { isInside } from './views-at.ts'

/** Whether something of what is picked, new or an old mark, lies outside the outline of a view. */
export function outsideView(view: View, picks: Picks, marks: readonly Mark[]): boolean {
  const { outline } = view
  if (outline === undefined) return false
  return picks.features.some((feature) => placesOf(feature, marks).some((pixel) => !isInside(outline, pixel)))
}
