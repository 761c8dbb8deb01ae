import { asSentence } from '../../core/words/as-sentence.ts'
import { ScantlingError } from '../../core/words/scantling-error.ts'

/** An error as a sentence for a person. */
export const inWords = (error: unknown): string =>
  error instanceof ScantlingError
    ? asSentence(error.message)
    : `Scantling failed by a fault of its own (${error instanceof Error ? error.message : String(error)}).`
