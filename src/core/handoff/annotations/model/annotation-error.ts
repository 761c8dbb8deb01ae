import { ScantlingError } from '../../../words/scantling-error.ts'

/** Why a file of annotations can't be read: a sentence. */
export class AnnotationError extends ScantlingError {
  override name = 'AnnotationError'
}
