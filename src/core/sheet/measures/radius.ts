import type { TrueMeasure } from './shape.ts'
import { trueCircle } from './true-circle.ts'

/** Circle: its radius. */
export const radius: TrueMeasure = ([a]) => {
  const circle = trueCircle(a)
  return { value: circle.radius, gradient: circle.sensitivity[2] }
}
