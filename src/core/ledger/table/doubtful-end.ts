import type { QuantityKind } from '../../quantity/quantity-kind.ts'
import type { Interval } from '../../uncertainty/interval.ts'
import type { Decision } from '../adoption/adopt.ts'

/** What a value can't be told from: no size at all; the angle between lines that are parallel, either way round. */
export type DoubtfulEnd = 'nothing' | 'parallel'

/** Of what U is written to: an interval that comes as near to nothing is written from nothing. */
const LAST_DIGITS = 0.01

/**
 * What an adopted value can't be told from at 95 %, if anything. A clear figure is what it says, and a count that of things.
 * @param U of it
 * @param between where first order does not hold; otherwise value ± U
 */
export function doubtfulEnd(
  kind: QuantityKind,
  { adopted, basis, from }: Decision,
  U: number,
  between: Interval | undefined,
): DoubtfulEnd | undefined {
  if (adopted === null || adopted.sources.length === 0 || basis === 'printed' || kind === 'count')
    return undefined
  const { low, high } = between ?? { low: adopted.value - U, high: adopted.value + U }
  if (kind !== 'angle') return low <= LAST_DIGITS * U ? 'nothing' : undefined
  const lines = from.some(({ evidence }) => evidence.basis === 'scaled' && evidence.measure === 'angle')
  // An angle between lines is from 0 to 180°, and its two ends are one and the same: lines that are parallel.
  if (lines) return low <= 0 || high >= Math.PI ? 'parallel' : undefined
  return low <= 0 && high >= 0 ? 'nothing' : undefined
}
