import { reason } from '../../words/core-words.ts'
import type { NotationReason } from '../../words/notation.ts'
import type { Figure } from '../figure.ts'
import type { Length } from '../length.ts'
import { NotationError } from '../notation/notation-error.ts'
import { parseFigure } from './parse-figure.ts'
import { type LengthContext, parseLength } from './parse-length.ts'

/** What a figured size is of: two points or lines, a circle, or a side of a rectangle. */
export type KnownSizeOf = 'distance' | 'diameter' | 'rectangle'

/**
 * Reads a figured size as it is printed: a length, or any figure that gives one which fits what it is a size of: `12" DIA.`,
 * `Ø 6`, `14 3/8 C.C.`
 *
 * @param of undefined where any length will do
 * @throws NotationError, also for a figure that is of another kind, or is no exact size to take a scale from
 */
export function parseKnownSize(text: string, of: KnownSizeOf | undefined, context: LengthContext): Length {
  const plain = lengthOrError(text, context)
  if (!(plain instanceof NotationError)) return plain
  const figure = parseFigure(text, context)
  const problem = problemOf(figure, of)
  if (figure.length === undefined || problem !== null) {
    throw new NotationError(text, 0, problem ?? reason('notation.known-size-without-length'))
  }
  return figure.length
}

function lengthOrError(text: string, context: LengthContext): Length | NotationError {
  try {
    return parseLength(text, context)
  } catch (error) {
    if (error instanceof NotationError) return error
    throw error
  }
}

function problemOf(figure: Figure, of: KnownSizeOf | undefined): NotationReason | null {
  if (figure.length === undefined) return reason('notation.known-size-without-length')
  if (figure.of === 'radius' && of !== 'distance' && of !== undefined) {
    return reason('notation.known-size-is-a-radius', { of })
  }
  if (figure.of === 'diameter' && of === 'rectangle') return reason('notation.known-size-is-a-diameter')
  if (figure.notToScale) return reason('notation.known-size-not-to-scale')
  if (figure.limit ?? figure.looseness) return reason('notation.known-size-not-exact')
  return null
}
