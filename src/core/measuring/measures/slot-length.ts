import { element } from '../../linear-algebra/element.ts'
import { centres } from './centres.ts'
import { slotWidth } from './slot-width.ts'
import type { TrueMeasure } from './true-measure.ts'

/**
 * Circle, circle, the round ends of a slot: its length over all, from the top of one end to that of the other. It is what lies
 * between the centres and the width, of the same picks: a middle that lies further out goes with a smaller radius.
 */
export const slotLength: TrueMeasure = (ends) => {
  const [between, width] = [centres(ends), slotWidth(ends)]
  return {
    value: between.value + width.value,
    gradient: between.gradient.map((g, i) => g + element(width.gradient, i)),
  }
}
