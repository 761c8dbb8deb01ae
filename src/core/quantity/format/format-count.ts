import { CoreError } from '../../words/core-error.ts'
import { reason } from '../../words/core-words.ts'
import { measuredDecimal } from './decimals.ts'

/**
 * Writes a count; one that was worked out and is no whole number keeps its decimals.
 *
 * @param uncertainty expanded, decides how many decimals such a one is written to
 * @throws ScantlingError for a number that is not finite
 */
export function formatCount(count: number, uncertainty?: number): string {
  if (!Number.isFinite(count)) {
    throw new CoreError(reason('notation.unwritable-count', { value: String(count) }))
  }
  return measuredDecimal(count, uncertainty)
}
