import type { AnyReason } from '../../core/words/reason.ts'
import { ScantlingError } from '../../core/words/scantling-error.ts'
import { inWords } from './words/services-words.ts'

/** What went wrong with a folder or file on disk, or with what was asked. */
export class ServiceError extends ScantlingError {
  override name = 'ServiceError'

  /** @param reason from the catalogue of services or of core */
  constructor(reason: AnyReason) {
    super(reason, inWords(reason))
  }
}
