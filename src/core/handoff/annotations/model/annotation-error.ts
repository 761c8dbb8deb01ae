import type { AnnotationReason } from '../../../words/annotations.ts'
import { inWords } from '../../../words/core-words.ts'
import { ScantlingError } from '../../../words/scantling-error.ts'

/** Why notes can't be handed on as annotations, or a file of annotations can't be read. */
export class AnnotationError extends ScantlingError {
  override name = 'AnnotationError'

  constructor(reason: AnnotationReason) {
    super(reason, inWords(reason))
  }
}
