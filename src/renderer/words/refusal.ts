import type { AnyReason } from '../../core/words/reason.ts'
import { ScantlingError } from '../../core/words/scantling-error.ts'

/** What comes of something that core may refuse. */
export function attempted<T>(attempt: () => T): { done: T } | { refused: AnyReason } {
  try {
    return { done: attempt() }
  } catch (error) {
    if (error instanceof ScantlingError) return { refused: error.reason }
    throw error
  }
}

/** What core has against something that is tried; null when it takes it. */
export function refusalOf(attempt: () => unknown): AnyReason | null {
  const came = attempted(attempt)
  return 'refused' in came ? came.refused : null
}
