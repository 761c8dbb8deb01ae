import { type CoreReason, inWords } from '../words/core-words.ts'
import { ScantlingError } from '../words/scantling-error.ts'

/** A figure that can't be fitted or measured; the message says why. */
export class GeometryError extends ScantlingError {
  override name = 'GeometryError'

  constructor(reason: CoreReason | string) {
    super(reason, typeof reason === 'string' ? reason : inWords(reason))
  }
}
