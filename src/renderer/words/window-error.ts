import { ScantlingError } from '../../core/words/scantling-error.ts'
import { inWords, type WindowReason } from './window-words.ts'

/** What the window itself says a person can do something about. */
export class WindowError extends ScantlingError {
  declare readonly reason: WindowReason

  constructor(reason: WindowReason) {
    super(reason, inWords(reason))
  }
}
