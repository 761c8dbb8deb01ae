import { ScantlingError } from '../words/scantling-error.ts'

/** A formula that can't be read or does not make sense; the message is a sentence. */
export class FormulaError extends ScantlingError {
  override name = 'FormulaError'
}
