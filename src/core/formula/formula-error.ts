import { CoreError } from '../words/core-error.ts'
import { type CoreReason, reason } from '../words/core-words.ts'

/** A formula that can't be read or does not make sense. */
export class FormulaError extends CoreError {
  override name = 'FormulaError'
  /** The formula, and where in it that is, UTF-16 code units; absent where the whole of it is meant. */
  readonly place: { readonly text: string; readonly at: number } | undefined

  constructor(why: CoreReason, place?: { readonly text: string; readonly at: number }) {
    super(why)
    this.place = place
  }
}

/** A formula in which something is wrong at a place. */
export const stoppedAt = (text: string, at: number, problem: CoreReason): FormulaError =>
  new FormulaError(reason('formula.stopped', { text, at, problem }), { text, at })
