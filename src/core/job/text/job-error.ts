import { inWords } from '../../words/core-words.ts'
import type { AnyReason } from '../../words/reason.ts'
import { ScantlingError } from '../../words/scantling-error.ts'

/** A job document, or an edit to one, that is not sound. The message is a sentence: where, and what. */
export class JobError extends ScantlingError {
  override name = 'JobError'

  constructor(reason: AnyReason) {
    super(reason, inWords(reason))
  }
}
