import { reason } from '../../words/core-words.ts'
import { TokenReader } from '../notation/token-reader.ts'

/** What is counted on a drawing, singular and plural, and the words for how many are wanted. */
export const COUNTED: ReadonlyMap<string, 'holes' | 'places'> = new Map([
  ['hole', 'holes'],
  ['holes', 'holes'],
  ['place', 'places'],
  ['places', 'places'],
  ['plcs', 'places'],
])

/**
 * Reads a whole number of things: `4`, `4 HOLES`, `6 PLACES`.
 *
 * @throws NotationError
 */
export function parseCount(text: string): number {
  const reader = new TokenReader(text)
  const number = reader.peek()
  if (number.kind !== 'number' || number.places > 0) {
    throw reader.error(reason('notation.count-expected'))
  }
  const count = Number(number.text)
  if (!Number.isSafeInteger(count)) throw reader.error(reason('notation.count-too-large'))
  reader.take()
  const word = reader.peek()
  if (word.kind === 'word' && COUNTED.has(word.text)) reader.take()
  if (!reader.atEnd()) throw reader.error(reason('notation.after-count'))
  return count
}
