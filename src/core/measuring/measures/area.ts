import { GeometryError } from '../../geometry/geometry-error.ts'
import { crossesItself, polygonArea } from '../../geometry/polygon.ts'
import type { TrueMeasure } from './true-measure.ts'

/** Closed path: the area inside it. */
export const area: TrueMeasure = ([path]) => {
  if (path === undefined) throw new GeometryError('An area needs a closed path.')
  if (crossesItself(path.points)) {
    throw new GeometryError(`Path ${path.mark} crosses itself, so the area inside it is not determined.`)
  }
  const { value, gradient } = polygonArea(path.points)
  if (value === 0) throw new GeometryError(`Path ${path.mark} encloses nothing.`)
  return value < 0 ? { value: -value, gradient: gradient.map((g) => -g) } : { value, gradient }
}
