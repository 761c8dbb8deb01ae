import { reason } from '../../words/core-words.ts'
import { NotationError } from '../notation/notation-error.ts'
import type { TokenReader } from '../notation/token-reader.ts'
import type { TokenKind } from '../notation/tokenise.ts'
import { addNote, addWords, type FigureDraft, isValued } from './figure-draft.ts'
import { meaningOfWords } from './figure-words.ts'
import { type LengthContext, parseLength } from './parse-length.ts'

/** Words, a number with its mark, or a decimal. */
const SAYS_SOMETHING = /[a-z]{2}|\d\s*["'°″′”’]|^\s*\d*[.,]\d+\s*$|\d\s*[/⁄]\s*\d/i

/** What limits begin with. */
const SIGNS: ReadonlySet<TokenKind> = new Set(['plus', 'dash', 'plus-minus'])

/** How many signs stand to the bracket that closes the one at the place; undefined where none does. */
function closingAhead(reader: TokenReader): number | undefined {
  for (let ahead = 1; reader.peek(ahead).kind !== 'end'; ahead++) {
    const { text } = reader.peek(ahead)
    if (text === '(') return undefined
    if (text === ')') return ahead
  }
  return undefined
}

/**
 * Takes a bracket: about the size it makes a reference dimension; after it, it holds `REF` or is kept as a note. False
 * where none stands.
 */
export function acceptBracket(reader: TokenReader, draft: FigureDraft, context: LengthContext): boolean {
  const bracket = reader.peek()
  if (bracket.text === ')' && draft.open && isValued(draft)) {
    reader.take()
    draft.open = false
    return true
  }
  if (bracket.text !== '(') return false
  const closing = closingAhead(reader)
  if (closing === undefined) throw reader.error(reason('notation.bracket-open'))
  if (!isValued(draft)) {
    if (draft.open !== undefined) throw reader.error(reason('notation.term-repeated'))
    reader.take()
    draft.open = true
    draft.reference = true
    return true
  }
  const close = reader.peek(closing)
  const inner = reader.text.slice(bracket.end, close.at).trim().replace(/\s+/g, ' ')
  const word = inner.toLowerCase().replace(/[^a-z]/g, '')
  const meaning = /^[a-z .]+$/i.test(inner) ? meaningOfWords(word) : undefined
  if (inner === '') throw reader.error(reason('notation.bracket-empty'))
  const fraction = draft.read?.number.form === 'whole' && /^(?:\d+\s*[/⁄]\s*\d+|[¼-¾⅐-⅞])$/.test(inner)
  const signed = SIGNS.has(reader.peek(1).kind)
  if (fraction || signed || (draft.gauge === undefined && !SAYS_SOMETHING.test(inner))) {
    // `14 (3/8)` may be 14 3/8, `3(8)` may be 3/8, and the limits in `5 (±1/32)` would be lost in a note.
    throw reader.error(reason('notation.bracketed-fraction'))
  }
  checkGauge(reader, draft, inner, context)
  reader.take(closing + 1)
  if (meaning !== undefined) addWords(reader, draft, { meaning, token: bracket })
  else addNote(reader, draft, `(${inner})`, bracket)
  return true
}

/** A thickness in brackets says which table a gauge number is of, so it must be that of the table taken. */
function checkGauge(reader: TokenReader, draft: FigureDraft, inner: string, context: LengthContext): void {
  const { gauge, length } = draft
  if (gauge === undefined || length === undefined) return
  try {
    const stated = parseLength(inner, context)
    if (stated.mm.sub(length.mm).abs().compare(stated.graduation.div(2)) <= 0) return
    throw reader.error(
      reason('notation.gauge-of-another-thickness', { standard: gauge.standard, stated: inner }),
      reader.peek(1),
    )
  } catch (error) {
    // Words in brackets say nothing of the thickness.
    if (!(error instanceof NotationError) || error.text === reader.text) throw error
  }
}
