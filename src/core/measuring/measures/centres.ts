import { element } from '../../linear-algebra/element.ts'
import { between } from './between.ts'
import { trueCircle } from './true-circle.ts'
import type { TrueMeasure } from './true-measure.ts'

/** Circle, circle: how far their centres are apart. */
export const centres: TrueMeasure = ([a, b]) => {
  const [p, q] = [trueCircle(a), trueCircle(b)]
  const { value, gradient } = between(p.centre, q.centre)
  const [px, py, qx, qy] = gradient as [number, number, number, number]
  return {
    value,
    gradient: [
      ...p.sensitivity[0].map((g, i) => px * g + py * element(p.sensitivity[1], i)),
      ...q.sensitivity[0].map((g, i) => qx * g + qy * element(q.sensitivity[1], i)),
    ],
  }
}
