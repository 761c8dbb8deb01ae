import { ScantlingError } from '../../core/words/scantling-error.ts'

/** What went wrong with a folder or file on disk, as a sentence that names it. */
export class ServiceError extends ScantlingError {
  override name = 'ServiceError'
}
