import type { AnyReason } from '../../../core/words/reason.ts'
import { ScantlingError } from '../../../core/words/scantling-error.ts'
import { inWords } from '../../services/words/services-words.ts'

/** A request that is turned away: the reason goes back to whoever asked, `why` into the log. */
export class Refusal extends ScantlingError {
  override name = 'Refusal'
  readonly status: number
  readonly why: string

  /** @param status HTTP status code, RFC 9110 */
  constructor(status: number, why: string, reason: AnyReason) {
    super(reason, inWords(reason))
    this.status = status
    this.why = why
  }
}
