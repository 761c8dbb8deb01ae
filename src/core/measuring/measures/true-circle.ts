import { type CircleFit, fitCircle } from '../../geometry/fit-circle.ts'
import type { True } from '../../geometry/frames.ts'
import { GeometryError } from '../../geometry/geometry-error.ts'
import { reason } from '../../words/core-words.ts'
import type { TrueFeature } from './true-measure.ts'

/** The circle through the picks of a mark, fitted in true size. */
export function trueCircle(shape: TrueFeature | undefined): CircleFit<True> {
  if (shape === undefined) throw new GeometryError(reason('measure.circle-missing'))
  return fitCircle(shape.points)
}
