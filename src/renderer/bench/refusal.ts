import { asSentence } from '../../core/words/as-sentence.ts'
import { ScantlingError } from '../../core/words/scantling-error.ts'

/** What core has against something that is tried, in a sentence; empty when it takes it. */
export function refusalOf(attempt: () => unknown): string {
  try {
    attempt()
    return ''
  } catch (error) {
    if (error instanceof ScantlingError) return asSentence(error.message)
    throw error
  }
}
