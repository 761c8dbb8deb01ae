import { ScantlingError } from '../scantling-error.ts'

/** Why a file of annotations can't be read: a sentence. */
export class AnnotationError extends ScantlingError {
  override name = 'AnnotationError'
}
