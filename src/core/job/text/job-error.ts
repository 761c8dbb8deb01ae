import { CoreError } from '../../words/core-error.ts'

/** A job document, or an edit to one, that is not sound. The message is a sentence: where, and what. */
export class JobError extends CoreError {
  override name = 'JobError'
}
