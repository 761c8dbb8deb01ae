import { trueCircle } from './true-circle.ts'
import type { TrueMeasure } from './true-measure.ts'

/** Circle: its diameter. */
export const diameter: TrueMeasure = ([a]) => {
  const circle = trueCircle(a)
  return { value: 2 * circle.radius, gradient: circle.sensitivity[2].map((g) => 2 * g) }
}
