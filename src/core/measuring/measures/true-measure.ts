import type { True } from '../../geometry/frames.ts'
import { GeometryError } from '../../geometry/geometry-error.ts'
import type { Measured } from '../../geometry/polygon.ts'
import type { MarkKind } from '../../job/model/types.ts'
import { reason } from '../../words/core-words.ts'

/** A feature after mapping: its points in true size. */
export interface TrueFeature {
  mark: string
  kind: MarkKind
  points: readonly True[]
  closed: boolean
}

/**
 * Value in mm, mm² or radians; gradient over the points of all shapes in order: x0, y0, x1, …
 * Throws GeometryError where there is nothing to measure.
 */
export type TrueMeasure = (shapes: readonly TrueFeature[]) => Measured

/** One of the points of a shape; throws GeometryError when there is none. */
export const pointAt = (shape: TrueFeature | undefined, i: number): True => {
  const p = shape?.points[i]
  if (p === undefined) throw new GeometryError(reason('measure.mark-missing'))
  return p
}
