import { CoreError } from '../../../words/core-error.ts'

/** Why notes can't be handed on as annotations, or a file of annotations can't be read. */
export class AnnotationError extends CoreError {
  override name = 'AnnotationError'
}
