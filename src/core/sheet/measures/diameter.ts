import type { TrueMeasure } from './shape.ts'
import { trueCircle } from './true-circle.ts'

/** Circle: its diameter. */
export const diameter: TrueMeasure = ([a]) => {
  const circle = trueCircle(a)
  return { value: 2 * circle.radius, gradient: circle.sensitivity[2].map((g) => 2 * g) }
}
