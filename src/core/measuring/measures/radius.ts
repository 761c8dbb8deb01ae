import { trueCircle } from './true-circle.ts'
import type { TrueMeasure } from './true-measure.ts'

/** Circle: its radius. */
export const radius: TrueMeasure = ([a]) => {
  const circle = trueCircle(a)
  return { value: circle.radius, gradient: circle.sensitivity[2] }
}
