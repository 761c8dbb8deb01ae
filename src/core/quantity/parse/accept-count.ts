import { reason } from '../../words/core-words.ts'
import type { LengthUnit } from '../length.ts'
import type { TokenReader } from '../notation/token-reader.ts'
import type { Token } from '../notation/tokenise.ts'
import { wordsAhead } from './accept-words.ts'
import { metricThreadAt } from './after-size.ts'
import { addOf, addWords, type FigureDraft, isValued } from './figure-draft.ts'
import { COUNTED } from './parse-count.ts'

const isWhole = (token: Token): boolean => token.kind === 'number' && token.places === 0
const startsNumber = ({ kind }: Token): boolean => kind === 'number' || kind === 'vulgar'

/** `x` between a number and what there is so often. */
const isTimes = (token: Token): boolean =>
  (token.kind === 'word' && token.text === 'x') || '×✕✖╳'.includes(token.text || ' ')

/** How many signs a fraction below one takes at a place: 0 where none stands. */
export function fractionLength(reader: TokenReader, from: number): number {
  if (reader.peek(from).kind === 'vulgar') return 1
  const bar = reader.peek(from + 1)
  return isWhole(reader.peek(from)) && bar.kind === 'slash' && isWhole(reader.peek(from + 2)) ? 3 : 0
}

/** Whether things that there are several of are named after the size at a place, with no number of their own. */
function severalNamed(reader: TokenReader, from: number): boolean {
  for (let ahead = from; ; ) {
    const token = reader.peek(ahead)
    const found = wordsAhead(reader, ahead)
    if (token.kind === 'word' && isSeveral(token.text)) return true
    const meaning = found?.meaning
    if ((meaning?.says === 'fastener' || meaning?.says === 'note') && meaning.several) return true
    if (found !== undefined) ahead += found.length
    else if (token.kind === 'inch' || token.kind === 'word') ahead += 1
    else return false
  }
}

const isSeveral = (word: string): boolean => COUNTED.has(word) && word.endsWith('s')

/** A way to write how many; how many signs it takes, and whether the number may mean something else. */
interface CountForm {
  readonly length: number
  readonly counted?: 'holes' | 'places'
  readonly mayBeSection?: true
  readonly spaced?: true
}

function formOfCount(reader: TokenReader, draft: FigureDraft, bare: LengthUnit): CountForm | undefined {
  const [first, second, third] = [reader.peek(), reader.peek(1), reader.peek(2)]
  const bracketed = first.text === '(' && isWhole(second) && third.text === ')'
  if (bracketed) {
    const after = reader.peek(3)
    const named = COUNTED.get(after.text)
    if (named !== undefined && after.kind === 'word') return { length: 4, counted: named }
    return isValued(draft) || after.kind === 'end' ? undefined : { length: 3 }
  }
  if (first.kind !== 'number') return undefined
  const counted = second.kind === 'word' ? COUNTED.get(second.text) : undefined
  if (counted !== undefined) return { length: 2, counted }
  if (!isWhole(first)) return undefined
  const words = wordsAhead(reader, 1)
  if (words?.meaning.says === 'fastener') return { length: 1 }
  if (
    words?.meaning.says === 'note' &&
    (words.meaning.note === 'EQ. SP.' || words.meaning.note === 'SPACES')
  ) {
    return { length: 1 }
  }
  if (isValued(draft) || draft.count !== undefined) return undefined
  if (metricThreadAt(reader, 1)) return { length: 1 }
  if (isTimes(second)) {
    const form = timesForm(reader)
    // `Ø 6 x 3/8` is a size by a size.
    return form?.mayBeSection && (draft.of !== undefined || bare !== 'in') ? undefined : form
  }
  if (second.text === '@' && startsNumber(third)) return { length: 2, spaced: true }
  if (second.kind !== 'dash') return undefined
  const fraction = fractionLength(reader, 2)
  if (fraction > 0) return severalNamed(reader, 2 + fraction) ? { length: 2 } : undefined
  return wordsAhead(reader, 2)?.meaning.says === 'term' ? { length: 2 } : undefined
}

/** `4 × Ø 9/16`, `4X 9/16`; with a gap, `4 x 9/16` may also be a section of bar. */
function timesForm(reader: TokenReader): CountForm | undefined {
  const times = reader.peek(1)
  if (times.kind === 'word' && !times.spaced && reader.peek(2).spaced) return { length: 2 }
  if (wordsAhead(reader, 2) !== undefined || reader.peek(2).text === 'm') return { length: 2 }
  const fraction = fractionLength(reader, 2)
  const unit = reader.peek(2 + fraction).kind === 'inch' ? 1 : 0
  if (startsNumber(reader.peek(2)) && severalNamed(reader, 2 + (fraction || 1) + unit)) return { length: 2 }
  const after = wordsAhead(reader, 2 + (fraction || 1) + unit)?.meaning
  if (startsNumber(reader.peek(2)) && (after?.says === 'term' || (after?.says === 'note' && after.of)))
    return { length: 2 }
  const end = reader.peek(2 + fraction + unit)
  // Of another unit than inches, or none of bars: a fraction of a foot or of a millimetre.
  const otherUnit =
    end.kind === 'foot' || (end.kind === 'word' && wordsAhead(reader, 2 + fraction + unit) === undefined)
  // One of something is not written so.
  const several = reader.peek().text !== '1'
  return fraction > 0 && several && !isTimes(end) && !otherUnit
    ? { length: 2, mayBeSection: true }
    : undefined
}

/**
 * Takes how many there are: `4 HOLES`, `6 PLACES`, `8 BOLTS`, `(4)`, `4X`, `4 ×`, and the `8 –` of `8 – 5/8 BOLTS`; false
 * where none stands.
 *
 * @param bare the unit of a number without one
 */
export function acceptCount(reader: TokenReader, draft: FigureDraft, bare: LengthUnit): boolean {
  const form = formOfCount(reader, draft, bare)
  if (form === undefined) return false
  const number = reader.peek().kind === 'number' ? reader.peek() : reader.peek(1)
  if (draft.count !== undefined) throw reader.error(reason('notation.count-repeated'), number)
  const count = Number(number.text)
  if (number.places > 0 || count < 1 || !Number.isSafeInteger(count)) {
    throw reader.error(reason('notation.count-not-whole', { counted: form.counted ?? 'things' }), number)
  }
  if (count === 1 && reader.peek(1).kind === 'dash' && fractionLength(reader, 2) > 0) {
    // `1-9/16 HOLES` says one and several.
    const size = reader.text.slice(reader.peek(2).at, reader.peek(1 + fractionLength(reader, 2)).end)
    throw reader.error(reason('notation.count-or-size', { count: '1', size }), number)
  }
  reader.take(form.length)
  draft.count = count
  if (form.counted !== undefined) draft.counted = form.counted
  if (form.mayBeSection) draft.mayBeSection = true
  if (form.spaced) addOf(reader, draft, 'centres', number)
  const words = form.length === 1 ? wordsAhead(reader) : undefined
  if (words !== undefined)
    addWords(reader, draft, { meaning: words.meaning, token: reader.take(words.length) })
  return true
}
