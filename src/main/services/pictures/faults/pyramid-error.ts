import type { AnyReason } from '../../../../core/words/reason.ts'
import { ScantlingError } from '../../../../core/words/scantling-error.ts'
import { inWords } from '../../words/services-words.ts'

/** Why pictures could not be made; its words are the end of a sentence. */
export class PyramidError extends ScantlingError {
  override name = 'PyramidError'

  constructor(reason: AnyReason) {
    super(reason, inWords(reason))
  }
}
