import { CoreError } from '../../words/core-error.ts'
import { reason } from '../../words/core-words.ts'
import type { LengthUnit } from '../length.ts'
import { measuredDecimal } from './decimals.ts'

export interface AreaFormat {
  readonly unit: LengthUnit
  /** Expanded uncertainty, square millimetres: decides how many decimals are written. */
  readonly uncertainty?: number
}

const MM2_PER_SQUARE_INCH = 25.4 * 25.4

/**
 * Writes an area in decimals: `12.4 sq in`, `8000 mm²`.
 *
 * @param mm2 square millimetres
 * @throws ScantlingError for a number that is not finite
 */
export function formatArea(mm2: number, format: AreaFormat): string {
  if (!Number.isFinite(mm2)) {
    throw new CoreError(reason('notation.unwritable-area', { value: String(mm2) }))
  }
  const per = format.unit === 'in' ? MM2_PER_SQUARE_INCH : 1
  const text = measuredDecimal(
    mm2 / per,
    format.uncertainty === undefined ? undefined : format.uncertainty / per,
  )
  return `${text} ${format.unit === 'in' ? 'sq in' : 'mm²'}`
}
