import type { Pixel } from '../../core/geometry/frames.ts'
import type { Mark } from '../../core/job/types.ts'
import type { PickedFeature, Picks } from '../picking/picks.ts'
import { shapeOf } from './overlay/shape.ts'
import { middle } from './overlay/span.ts'

/** One thing that was picked, as it is drawn: its picks, or where the old mark lies. */
export interface PickedShape {
  feature: PickedFeature
  pixels: Pixel[]
}

export function pickedShapes(picks: Picks, marks: readonly Mark[]): PickedShape[] {
  return picks.features.flatMap((feature): PickedShape[] => {
    if ('pixels' in feature) return [{ feature, pixels: feature.pixels }]
    const mark = marks.find(({ id }) => id === feature.mark)
    const shape = mark === undefined ? null : shapeOf(mark)
    if (shape === null) return []
    return [{ feature, pixels: shape.kind === 'segment' ? shape.ends : [middle(shape)] }]
  })
}
