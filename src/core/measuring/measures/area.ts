import { GeometryError } from '../../geometry/geometry-error.ts'
import { crossesItself, polygonArea } from '../../geometry/polygon.ts'
import { reason } from '../../words/core-words.ts'
import type { TrueMeasure } from './true-measure.ts'

/** Closed path: the area inside it. */
export const area: TrueMeasure = ([path]) => {
  if (path === undefined) throw new GeometryError(reason('measure.area-of-a-path'))
  if (crossesItself(path.points)) {
    throw new GeometryError(reason('measure.path-crosses-itself', { mark: path.mark }))
  }
  const { value, gradient } = polygonArea(path.points)
  if (value === 0) throw new GeometryError(reason('measure.path-encloses-nothing', { mark: path.mark }))
  return value < 0 ? { value: -value, gradient: gradient.map((g) => -g) } : { value, gradient }
}
