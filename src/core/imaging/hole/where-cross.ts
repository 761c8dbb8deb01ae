import * as elements from '../../linear-algebra/elements-unchecked.ts'
import { DIRECTION } from './hole-model.ts'

const { f64 } = elements

/** Where lines in the directions of a hole's that pass the origin so far across meet, pixels from it. @param p of the hole */
export function whereCross(p: Float64Array, [a, b]: readonly [number, number]): [number, number] {
  const [ux, uy] = [Math.cos(f64(p, DIRECTION[0])), Math.sin(f64(p, DIRECTION[0]))]
  const [vx, vy] = [Math.cos(f64(p, DIRECTION[1])), Math.sin(f64(p, DIRECTION[1]))]
  const sine = ux * vy - uy * vx
  return [(a * vx - b * ux) / sine, (a * vy - b * uy) / sine]
}
