import type { Figure } from '../figure.ts'
import { NotationError } from '../notation/notation-error.ts'
import { parseFigure } from './parse-figure.ts'
import type { LengthContext } from './parse-length.ts'

/** What a text says as a figure; null where it is none. */
export function figureOrNone(text: string, context: LengthContext): Figure | null {
  try {
    return parseFigure(text, context)
  } catch (error) {
    if (error instanceof NotationError) return null
    throw error
  }
}
