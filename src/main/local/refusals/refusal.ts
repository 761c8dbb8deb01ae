import { ScantlingError } from '../../../core/words/scantling-error.ts'

/** A request that is turned away: the sentence goes back to whoever asked, `why` into the log. */
export class Refusal extends ScantlingError {
  override name = 'Refusal'
  readonly status: number
  readonly why: string

  /** @param status HTTP status code, RFC 9110 */
  constructor(status: number, why: string, sentence: string) {
    super(sentence)
    this.status = status
    this.why = why
  }
}
