import type { Measure } from '../../job/model/types.ts'
import { normalisedError } from '../../uncertainty/normalised-error.ts'
import type { Uncertain } from '../../uncertainty/uncertain.ts'
import { reason } from '../../words/core-words.ts'
import type { AnyReason } from '../../words/reason.ts'

export const ENDS_DIFFER = 'evidence.ends-differ'

const OF_TWO_ENDS: ReadonlySet<Measure> = new Set(['slot-width', 'slot-length'])

/**
 * Tells that the two round ends of a slot are not of one size, so that its width is the mean of two; null where they may be,
 * and for what is no size of a slot.
 * @param diameters of both ends, of the same calibration: what they share does not set them apart (E_n, ISO/IEC 17043)
 */
export function endsDiffer(measure: Measure, diameters: () => [Uncertain, Uncertain]): AnyReason | null {
  if (!OF_TWO_ENDS.has(measure)) return null
  const [one, other] = diameters()
  if (normalisedError(one, other) <= 1) return null
  const [less, more] = [one.value, other.value].sort((a, b) => a - b) as [number, number]
  return reason(ENDS_DIFFER, { percent: 100 * (more / less - 1) })
}
