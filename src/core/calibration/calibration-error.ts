import { ScantlingError } from '../words/scantling-error.ts'

/** A view that can't be calibrated; the message says why and what to add. */
export class CalibrationError extends ScantlingError {
  override name = 'CalibrationError'
}
