import { ScantlingError } from '../../core/scantling-error.ts'

/** An error as a sentence for a person. */
export const inWords = (error: unknown): string =>
  error instanceof ScantlingError
    ? error.message
    : `Scantling failed by a fault of its own (${error instanceof Error ? error.message : String(error)}).`
