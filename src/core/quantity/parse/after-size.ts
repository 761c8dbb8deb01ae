import Fraction from 'fraction.js'
import { reason } from '../../words/core-words.ts'
import { fitLimits } from '../fits.ts'
import { formatAngle } from '../format/format-angle.ts'
import type { Length } from '../length.ts'
import type { TokenReader } from '../notation/token-reader.ts'
import type { Token } from '../notation/tokenise.ts'
import { wordsAhead } from './accept-words.ts'
import { addNote, addOf, type FigureDraft } from './figure-draft.ts'
import type { LengthContext } from './parse-length.ts'
import { angleFollows, readAngle } from './read-angle.ts'
import { isCapitalM, readLength } from './read-length.ts'

const isWhole = (token: Token): boolean => token.kind === 'number' && token.places === 0
const isTimes = (token: Token): boolean =>
  (token.kind === 'word' && token.text === 'x') || '×✕✖╳'.includes(token.text || ' ')

/** Limits further apart than this share of them are no limits of one size. Common practice, no source. */
const LIMITS_APART = new Fraction(1n, 10n)

/** `1.500/1.498`, one beside or under the other: both are decimals. */
function acceptSecondLimit(reader: TokenReader, draft: FigureDraft, context: LengthContext): boolean {
  const { read } = draft
  const between = reader.peek()
  const second = reader.peek(1)
  const joins =
    between.kind === 'slash' || between.kind === 'newline' || (between.kind === 'dash' && !between.spaced)
  if (read?.number.form !== 'decimal' || !joins || second.kind !== 'number' || second.places === 0)
    return false
  if (second.spaced && between.kind === 'dash') return false
  if (draft.limit !== undefined) throw reader.error(reason('notation.limit-and-tolerance'), between)
  if (draft.tolerance ?? draft.fit) throw reader.error(reason('notation.second-tolerance'), between)
  reader.take()
  const bare = read.unit === undefined ? (context.unit ?? 'in') : read.length.system
  const other = readLength(reader, bare)
  let one = read.length
  if (read.unit === undefined && other.unit !== undefined) {
    // The unit after the second belongs to both.
    const end = reader.mark()
    reader.backTo(draft.sizeAt ?? 0)
    one = readLength(reader, other.length.system).length
    reader.backTo(end)
  }
  draft.length = between2(reader, draft, one, other.length, between)
  draft.twoLimits = true
  return true
}

function between2(reader: TokenReader, draft: FigureDraft, one: Length, other: Length, at: Token): Length {
  const apart = one.mm.sub(other.mm).abs()
  const most = one.mm.compare(other.mm) > 0 ? one.mm : other.mm
  if (apart.n === 0n || apart.compare(most.mul(LIMITS_APART)) > 0) {
    throw reader.error(reason('notation.limits-apart'), at)
  }
  const graduation = one.graduation.compare(other.graduation) < 0 ? one.graduation : other.graduation
  const half: Length = { ...one, mm: apart.div(2), graduation, fraction: false, feet: false }
  draft.tolerance = { plus: half, minus: half }
  return { ...one, mm: one.mm.add(other.mm).div(2), graduation, fraction: false, feet: false }
}

/** Letters of holes and shafts that mean nothing else beside a size: not `M8`, `R8` or `X 8`, nor a unit. */
const FIT =
  /^(?:(?:CD|EF|FG|JS|Z[ABC]?|[A-HJKNPSTUVY])|(?:cd|ef|fg|js|z[abc]?|[a-hjknpstuvy]))(?:1[0-3]|0[01]|[1-9])$/

/** `1e3` is a thousand as computers write it; no e is made so finely. */
const POWER_OF_TEN = /^e[0-4]$/i

/** One class after a size, `H7` or `js6`, as it is written; undefined where none stands. */
function fitAt(reader: TokenReader, ahead: number): string | undefined {
  const [letters, grade] = [reader.peek(ahead), reader.peek(ahead + 1)]
  if (letters.kind !== 'word' || !isWhole(grade) || grade.at !== letters.end) return undefined
  const code = reader.text.slice(letters.at, grade.end)
  return FIT.test(code) && !POWER_OF_TEN.test(code) ? code : undefined
}

function acceptFit(reader: TokenReader, draft: FigureDraft): boolean {
  const first = draft.length === undefined ? undefined : fitAt(reader, 0)
  if (first === undefined || draft.length === undefined || draft.gauge !== undefined) return false
  const token = reader.peek()
  if (draft.fit !== undefined) throw reader.error(reason('notation.term-repeated'))
  if (draft.length.system !== 'mm') throw reader.error(reason('notation.fit-of-millimetres', { fit: first }))
  if (draft.tolerance) throw reader.error(reason('notation.second-tolerance'), token)
  const second = reader.peek(2).kind === 'slash' ? fitAt(reader, 3) : undefined
  reader.take(second === undefined ? 2 : 5)
  const limits = second === undefined ? fitLimits(draft.length.mm, first) : undefined
  draft.fit = { code: second === undefined ? first : `${first}/${second}`, ...(limits && { limits }) }
  return true
}

/** The `-13` of `1/2-13 UNC`: threads in an inch. A word must say that it is a thread. */
function acceptThread(reader: TokenReader, draft: FigureDraft): boolean {
  const count = reader.peek(1)
  if (draft.read === undefined || draft.thread !== undefined || reader.peek().kind !== 'dash') return false
  if (!isWhole(count) || reader.peek(2).kind === 'slash' || reader.peek(2).kind === 'newline') return false
  const perInch = Number(count.text)
  const said = wordsAhead(reader, 2)
  const tapped = draft.notes.includes('TAP') || (said?.meaning.says === 'note' && said.meaning.note === 'TAP')
  const form = said?.meaning.says === 'thread' ? said.meaning.form : undefined
  if ((form === undefined && !tapped) || perInch < 1 || perInch > 200) return false
  addOf(reader, draft, 'diameter', count)
  reader.take(form === undefined ? 2 : 2 + (said?.length ?? 0))
  draft.thread = { perInch, form: `${form ?? 'THD.'}${threadClass(reader)}` }
  return true
}

/** The `-2A` of `UNC-2A`. */
function threadClass(reader: TokenReader): string {
  const [dash, grade, side] = [reader.peek(), reader.peek(1), reader.peek(2)]
  if (dash.kind !== 'dash' || !isWhole(grade) || side.kind !== 'word' || !/^[ab]$/.test(side.text)) return ''
  reader.take(3)
  return `-${grade.text}${side.text.toUpperCase()}`
}

/** The `x 45°` of a chamfer. */
function acceptChamfer(reader: TokenReader, draft: FigureDraft): boolean {
  if (draft.read === undefined || !isTimes(reader.peek())) return false
  const times = reader.take()
  if (!angleFollows(reader)) throw reader.error(reason('notation.size-by-size'), times)
  addNote(reader, draft, `x ${formatAngle(readAngle(reader))}`, times)
  return true
}

/** Takes what may follow a size and nothing else; false where nothing of the kind stands. */
export function acceptAfterSize(reader: TokenReader, draft: FigureDraft, context: LengthContext): boolean {
  return (
    acceptSecondLimit(reader, draft, context) ||
    acceptFit(reader, draft) ||
    acceptThread(reader, draft) ||
    acceptChamfer(reader, draft)
  )
}

/** No thread rises in a turn by more than this share of its diameter. Common practice, no source. */
const STEEPEST = 3

/** Whether a metric thread, `M12`, stands so many signs ahead. */
export function metricThreadAt(reader: TokenReader, ahead: number): boolean {
  const [letter, size] = [reader.peek(ahead), reader.peek(ahead + 1)]
  return isCapitalM(reader, letter) && size.kind === 'number' && size.at === letter.end
}

/** Reads a metric thread, `M12` or `M12 × 1.75`; false where none stands. */
export function acceptMetricThread(reader: TokenReader, draft: FigureDraft): boolean {
  if (!metricThreadAt(reader, 0)) return false
  const letter = reader.peek()
  addOf(reader, draft, 'diameter', letter)
  reader.take()
  const { length, number, unit } = readLength(reader, 'mm')
  if (number.form === 'fraction' || length.feet || (unit !== undefined && unit.text !== 'mm')) {
    throw reader.error(reason('notation.word-unknown'), letter)
  }
  draft.length = length
  let pitch: string | undefined
  if (isTimes(reader.peek()) && reader.peek(1).kind === 'number') {
    reader.take()
    const written = reader.take()
    const whole = written.text.slice(0, written.text.length - written.places)
    pitch = written.places === 0 ? written.text : `${whole || '0'}.${written.text.slice(-written.places)}`
    // `M16 × 40` is a screw of that length.
    if (length.mm.compare(new Fraction(pitch).mul(STEEPEST)) < 0) {
      throw reader.error(reason('notation.size-by-size'), written)
    }
  }
  draft.thread = { form: 'M', ...(pitch !== undefined && { pitch }) }
  return true
}
