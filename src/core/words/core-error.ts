import { type CoreReason, inWords } from './core-words.ts'
import { ScantlingError } from './scantling-error.ts'

/** What core says a person can do something about. */
export class CoreError extends ScantlingError {
  declare readonly reason: CoreReason

  constructor(reason: CoreReason) {
    super(reason, inWords(reason))
  }
}
