import { CoreError } from '../words/core-error.ts'

/** A view that can't be calibrated; the reason says why and what to add. */
export class CalibrationError extends CoreError {
  override name = 'CalibrationError'
}
