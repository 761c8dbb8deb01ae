import type { Pixel } from '../../core/geometry/frames.ts'
import type { Mark } from '../../core/job/model/types.ts'
import { firstPlaces } from '../../core/job/picks/picks-of.ts'
import { foundMark, type NewFeature, type PickedFeature, type Picks } from '../picking/picks.ts'
import { shapeOf } from './shape.ts'
import { middle } from './span.ts'

/** One thing that was picked, as it is drawn: its picks, or where the old mark lies. */
export interface PickedShape {
  feature: PickedFeature
  pixels: Pixel[]
}

export function pickedShapes(picks: Picks, marks: readonly Mark[]): PickedShape[] {
  return picks.features.flatMap((feature): PickedShape[] => {
    if ('pixels' in feature) return [{ feature, pixels: placesOf(feature) }]
    const mark = marks.find(({ id }) => id === feature.mark)
    const shape = mark === undefined ? null : shapeOf(mark)
    if (shape === null) return []
    return [{ feature, pixels: shape.kind === 'segment' ? shape.ends : [middle(shape)] }]
  })
}

/** Where it was picked; of a line that was found on a stroke, its ends there. */
function placesOf(feature: NewFeature): Pixel[] {
  const mark = foundMark(feature)
  const found = mark === null ? [] : firstPlaces(mark)
  const [first, last] = [found[0], found.at(-1)]
  return feature.need === 'line' && first !== undefined && last !== undefined ? [first, last] : feature.pixels
}
