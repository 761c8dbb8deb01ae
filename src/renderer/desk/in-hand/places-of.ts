import type { Pixel } from '../../../core/geometry/frames.ts'
import type { Mark } from '../../../core/job/model/types.ts'
import { firstPlaces } from '../../../core/job/picks/picks-of.ts'
import type { PickedFeature } from '../../picking/picks.ts'

/** Where something that is picked lies on the sheet, whether it is new or an old mark; pixels of the scan. */
export function placesOf(feature: PickedFeature, marks: readonly Mark[]): readonly Pixel[] {
  if ('pixels' in feature) return feature.pixels
  const mark = marks.find(({ id }) => id === feature.mark)
  return mark === undefined ? [] : firstPlaces(mark)
}
