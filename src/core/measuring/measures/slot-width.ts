import { trueCircle } from './true-circle.ts'
import type { TrueMeasure } from './true-measure.ts'

/** Circle, circle, the round ends of a slot: its width, the mean of their diameters. */
export const slotWidth: TrueMeasure = ([a, b]) => {
  const [p, q] = [trueCircle(a), trueCircle(b)]
  return { value: p.radius + q.radius, gradient: [...p.sensitivity[2], ...q.sensitivity[2]] }
}
