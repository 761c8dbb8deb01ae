import { ScantlingError } from '../../words/scantling-error.ts'
import { measuredDecimal } from './decimals.ts'

/**
 * Writes a count; one that was worked out and is no whole number keeps its decimals.
 *
 * @param uncertainty expanded, decides how many decimals such a one is written to
 * @throws ScantlingError for a number that is not finite
 */
export function formatCount(count: number, uncertainty?: number): string {
  if (!Number.isFinite(count)) {
    throw new ScantlingError(`A count of ${count} cannot be written; check what it was worked out from.`)
  }
  return measuredDecimal(count, uncertainty)
}
