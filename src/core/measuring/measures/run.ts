import { GeometryError } from '../../geometry/geometry-error.ts'
import { pathLength } from '../../geometry/polygon.ts'
import { reason } from '../../words/core-words.ts'
import type { TrueMeasure } from './true-measure.ts'

/** Path: its length, back to the start when it is closed. */
export const run: TrueMeasure = ([path]) => {
  if (path === undefined) throw new GeometryError(reason('measure.run-of-a-path'))
  const measured = pathLength(path.points, path.closed)
  if (measured.value === 0) throw new GeometryError(reason('measure.path-is-a-point'))
  return measured
}
