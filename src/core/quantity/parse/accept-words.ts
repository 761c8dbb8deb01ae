import type { TokenReader } from '../notation/token-reader.ts'
import type { Token } from '../notation/tokenise.ts'
import { meaningOfWords, type WordMeaning } from './figure-words.ts'

/** Words that were taken, and the first sign of them. */
export interface TakenWords {
  readonly meaning: WordMeaning
  readonly token: Token
}

const SIGNS: ReadonlyMap<string, WordMeaning> = new Map<string, WordMeaning>([
  ['~', { says: 'looseness', looseness: 'about' }],
  ['≈', { says: 'looseness', looseness: 'about' }],
  ...[...'□◻▢☐'].map((sign) => [sign, { says: 'term', term: 'square' }] as const),
])

const isLetter = ({ kind, text }: Token): boolean => kind === 'word' && text.length === 1

/** Of one call-out: `C TO C`, `PITCH CIRCLE DIA.`, `NOT TO SCALE`. */
const MOST_WORDS = 5

/** What the most words at the place say together, and how many signs these are. */
export function wordsAhead(
  reader: TokenReader,
  from = 0,
): { readonly meaning: WordMeaning; readonly length: number } | undefined {
  const first = reader.peek(from)
  if (first.kind === 'diameter') return { meaning: { says: 'term', term: 'diameter' }, length: 1 }
  const sign = first.kind === 'other' ? SIGNS.get(first.text) : undefined
  if (sign !== undefined) return { meaning: sign, length: 1 }
  let joined = ''
  let ahead = from
  let best: ReturnType<typeof wordsAhead>
  for (let words = 0; words < MOST_WORDS && reader.peek(ahead).kind === 'word'; words++) {
    joined += reader.peek(ahead).text
    ahead += 1
    const meaning = meaningOfWords(joined)
    if (meaning !== undefined) best = { meaning, length: ahead - from }
    // `A/F`, `C-C`: between single letters only, for `M-IN` is no MIN.
    const { kind } = reader.peek(ahead)
    const joins = (kind === 'slash' || kind === 'dash') && isLetter(reader.peek(ahead - 1))
    if (joins && isLetter(reader.peek(ahead + 1))) ahead += 1
  }
  return best
}

/** Takes the most words at the place that have a meaning together; undefined where none stands. */
export function acceptWords(reader: TokenReader): TakenWords | undefined {
  const found = wordsAhead(reader)
  return found && { meaning: found.meaning, token: reader.take(found.length) }
}
