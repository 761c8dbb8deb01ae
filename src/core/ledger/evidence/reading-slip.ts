import { reason } from '../../words/core-words.ts'
import type { AnyReason } from '../../words/reason.ts'
import type { Reading } from './found-reading.ts'

/** No one size of a part is read as another so many times as large, unless it is a matter of some steps. */
const TIMES = 2
const STEPS = 20

/**
 * Why readings can't be of one size: a slip in one of them, a lost comma or another unit, which no mean mends; undefined
 * where they may be. Common practice, no source.
 * @param step what a reading may be off by in any case, mm or radians or mm²
 */
export function slipAmong(
  readings: readonly (Reading & { text: string })[],
  step: number,
): AnyReason | undefined {
  const [least, ...rest] = [...readings].sort((a, b) => Math.abs(a.value) - Math.abs(b.value))
  const most = rest.at(-1)
  if (least === undefined || most === undefined) return undefined
  const apart = Math.abs(most.value - least.value)
  const alike = Math.abs(most.value) <= TIMES * Math.abs(least.value) && most.value * least.value > 0
  return alike || apart <= STEPS * step
    ? undefined
    : reason('evidence.readings-slip', { least: least.text, most: most.text })
}
