import { GeometryError } from '../../geometry/geometry-error.ts'
import { reason } from '../../words/core-words.ts'
import { directionOf, turning } from './direction.ts'
import type { TrueMeasure } from './true-measure.ts'

/** Angle between the directions in which two lines were picked, 0..π. */
export const angle: TrueMeasure = ([a, b]) => {
  if (a === undefined || b === undefined) throw new GeometryError(reason('measure.angle-of-two-lines'))
  const [da, db] = [directionOf(a), directionOf(b)]
  const turned = Math.atan2(da.ux * db.uy - da.uy * db.ux, da.ux * db.ux + da.uy * db.uy)
  const sign = turned < 0 ? -1 : 1
  return {
    value: Math.abs(turned),
    gradient: [...turning(da).map((t) => -sign * t), ...turning(db).map((t) => sign * t)],
  }
}
