import { CoreError } from '../words/core-error.ts'

/** A formula that can't be read or does not make sense. */
export class FormulaError extends CoreError {
  override name = 'FormulaError'
}
