import { GeometryError } from '../../geometry/geometry-error.ts'
import type { Mark } from '../../job/model/types.ts'
import { reason } from '../../words/core-words.ts'
import { nameItemIn } from '../../words/name-in.ts'
import { circleFeature } from './circle-feature.ts'
import type { Feature } from './feature.ts'
import { lineFeature } from './line-feature.ts'
import { pathFeature } from './path-feature.ts'
import { pointFeature } from './point-feature.ts'

export type { Feature, Move } from './feature.ts'

/**
 * Turns a mark into a feature.
 * @throws GeometryError naming the mark when its picks do not determine it
 */
export function featureOf(mark: Mark): Feature {
  try {
    switch (mark.kind) {
      case 'point':
        return pointFeature(mark)
      case 'line':
        return lineFeature(mark)
      case 'circle':
        return circleFeature(mark)
      case 'path':
        return pathFeature(mark)
    }
  } catch (error) {
    if (error instanceof GeometryError)
      throw new GeometryError(
        nameItemIn(reason('feature.of-mark', { mark: mark.id, problem: error.reason }), mark),
      )
    throw error
  }
}
