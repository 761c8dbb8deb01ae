import { ScantlingError } from '../../../core/words/scantling-error.ts'
import { type CliReason, inWords } from './cli-words.ts'

/** What stops a command, and that a person can do something about. */
export class CliError extends ScantlingError {
  override name = 'CliError'

  constructor(reason: CliReason) {
    super(reason, inWords(reason))
  }
}
