import { NotationReader } from '../notation/token-reader.ts'

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
  const reader = new NotationReader(text)
  const number = reader.peek()
  if (number.kind !== 'number' || number.places > 0) {
    throw reader.error('Expected a whole number such as 4, or 4 HOLES.')
  }
  const count = Number(number.text)
  if (!Number.isSafeInteger(count))
    throw reader.error('Nothing is drawn in such numbers; write a smaller one.')
  reader.take()
  const word = reader.peek()
  if (word.kind === 'word' && COUNTED.has(word.text)) reader.take()
  if (!reader.atEnd()) throw reader.error('Only HOLES or PLACES may follow a count; take this away.')
  return count
}
