import { reason } from '../../words/core-words.ts'
import type { NotationReason } from '../../words/notation.ts'
import type { TokenReader } from '../notation/token-reader.ts'
import type { Token } from '../notation/tokenise.ts'

/** An exact number as written: n / d, in steps of 1 / parts. */
export interface WrittenNumber {
  readonly n: bigint
  readonly d: bigint
  /** How many of the last graduation make a whole: 16 for sixteenths, 1000 for three decimals, 1 for a whole number. */
  readonly parts: bigint
  readonly form: 'whole' | 'decimal' | 'fraction'
  /** The first sign of it. */
  readonly first: Token
  /** A dash joins its whole number and its fraction. */
  readonly dashed?: true
}

const VULGAR = new Map<string, readonly [bigint, bigint]>([
  ['¼', [1n, 4n]],
  ['½', [1n, 2n]],
  ['¾', [3n, 4n]],
  ['⅐', [1n, 7n]],
  ['⅑', [1n, 9n]],
  ['⅒', [1n, 10n]],
  ['⅓', [1n, 3n]],
  ['⅔', [2n, 3n]],
  ['⅕', [1n, 5n]],
  ['⅖', [2n, 5n]],
  ['⅗', [3n, 5n]],
  ['⅘', [4n, 5n]],
  ['⅙', [1n, 6n]],
  ['⅚', [5n, 6n]],
  ['⅛', [1n, 8n]],
  ['⅜', [3n, 8n]],
  ['⅝', [5n, 8n]],
  ['⅞', [7n, 8n]],
])

const isSign = ({ kind }: Token): boolean => kind === 'plus' || kind === 'dash'

const isWhole = (token: Token): boolean => token.kind === 'number' && token.places === 0

/** How many signs the fraction bar after the sign at `ahead` takes: 0 when there is none. */
function barLength(reader: TokenReader, ahead: number): number {
  const kind = reader.peek(ahead).kind
  // Between the two limits of a tolerance, as in `+1/-0`, a stroke is no bar.
  if (kind === 'slash') return isSign(reader.peek(ahead + 1)) ? 0 : 1
  if (kind !== 'newline') return 0
  let line = ahead + 1
  while (reader.peek(line).kind === 'dash' || reader.peek(line).kind === 'bar') line += 1
  if (line === ahead + 1) return isWhole(reader.peek(line)) ? 1 : 0
  return reader.peek(line).kind === 'newline' ? line + 1 - ahead : 0
}

function fractionAfter(reader: TokenReader, numerator: Token, whole: Token | undefined): [bigint, bigint] {
  const stacked = reader.peek().kind === 'newline'
  reader.take(barLength(reader, 0))
  const denominator = reader.peek()
  if (!isWhole(denominator)) throw reader.error(reason('notation.denominator-missing'))
  const n = BigInt(numerator.text)
  const d = BigInt(denominator.text)
  if (d === 0n) throw reader.error(reason('notation.denominator-zero'))
  if (n >= d) {
    const above = numerator.text
    const rest = n % d === 0n ? '' : ` ${n % d}/${d}`
    const lead = whole ? BigInt(whole.text) : 0n
    const lostGap = !whole && above.length > 1 && BigInt(above.slice(1)) < d
    const improper = reason('notation.improper-fraction', {
      stacked,
      write: `${lead + n / d}${rest}`,
      orWrite: lostGap ? `${above[0]} ${above.slice(1)}/${d}` : null,
    })
    throw reader.error(improper, numerator)
  }
  reader.take()
  return [n, d]
}

/**
 * How many signs stand between a whole number and its fraction: none after a space or before a single character such as
 * `⅜`, one for a dash; undefined when no fraction can follow.
 */
function jointLength(reader: TokenReader, joins: boolean): number | undefined {
  const token = reader.peek()
  if (token.kind === 'vulgar' || (isWhole(token) && token.spaced)) return 0
  if (token.kind !== 'dash' || !joins) return undefined
  const after = reader.peek(1)
  const fraction = after.kind === 'vulgar' || (isWhole(after) && barLength(reader, 2) > 0)
  // With a gap on either side it may be a minus, or begin a tolerance.
  return fraction && !token.spaced && !after.spaced ? 1 : undefined
}

/** The old way of keeping a whole number from its fraction, `4.1/2`; undefined where the point begins decimals. */
function pointedMixed(reader: TokenReader, first: Token): WrittenNumber | undefined {
  const denominator = reader.peek(2)
  if (first.comma || reader.peek(1).kind !== 'slash' || !isWhole(denominator)) return undefined
  const whole = first.text.slice(0, -first.places)
  const above = first.text.slice(-first.places)
  const d = BigInt(denominator.text)
  const n = BigInt(above)
  if (/^0*$/.test(whole) || above.startsWith('0') || d === 0n || n >= d) return undefined
  reader.take(3)
  return { n: BigInt(whole) * d + n, d, parts: d, form: 'fraction', first }
}

/**
 * Reads a number as the trade writes it: `14`, `2.375`, `2,375`, `.375`, `3/8`, `14 3/8`, `14-3/8`, `14.3/8`, `14⅜`.
 *
 * A stacked fraction is read over two lines: the line end stands for the bar, and a line of dashes between the two may
 * stand for it too. The upper line holds the whole number, a space and the upper number; the lower line the lower one.
 *
 * @param expected what to say where no number begins
 * @param joins whether a dash may join whole number and fraction; not so where a dash is a minus
 * @throws NotationError
 */
export function readNumber(reader: TokenReader, expected: NotationReason, joins = true): WrittenNumber {
  const first = reader.peek()
  if (first.kind === 'vulgar') {
    reader.take()
    const [n, d] = VULGAR.get(first.text) ?? [0n, 1n]
    return { n, d, parts: d, form: 'fraction', first }
  }
  if (first.kind !== 'number') throw reader.error(expected)
  const pointed = first.places > 0 ? pointedMixed(reader, first) : undefined
  if (pointed !== undefined) return pointed
  reader.take()
  if (first.places > 0) {
    const d = 10n ** BigInt(first.places)
    return { n: BigInt(first.text), d, parts: d, form: 'decimal', first }
  }
  if (barLength(reader, 0) > 0) {
    const [n, d] = fractionAfter(reader, first, undefined)
    return { n, d, parts: d, form: 'fraction', first }
  }
  const whole = BigInt(first.text)
  const skip = jointLength(reader, joins)
  if (skip === undefined) return { n: whole, d: 1n, parts: 1n, form: 'whole', first }
  const start = reader.peek(skip)
  const dashed = skip > 0 ? ({ dashed: true } as const) : {}
  if (start.kind === 'vulgar') {
    reader.take(skip + 1)
    const [n, d] = VULGAR.get(start.text) ?? [0n, 1n]
    return { n: whole * d + n, d, parts: d, form: 'fraction', first, ...dashed }
  }
  if (barLength(reader, skip + 1) === 0) {
    // Left to the caller: a second number may have a meaning of its own, as in `4 HOLES`.
    return { n: whole, d: 1n, parts: 1n, form: 'whole', first }
  }
  reader.take(skip + 1)
  const [n, d] = fractionAfter(reader, start, first)
  return { n: whole * d + n, d, parts: d, form: 'fraction', first, ...dashed }
}

/** What to say of a sign that cannot follow a number. */
export function afterNumber(reader: TokenReader, number: WrittenNumber): NotationReason {
  const token = reader.peek()
  if (token.kind === 'number') {
    const digits = token.text
    const guess = digits.length > 1 && number.form === 'whole' && token.places === 0
    if (guess && digits.length === 3) {
      return reason('notation.thousands-apart', { number: `${number.first.text}${digits}` })
    }
    return reason('notation.second-number', {
      instance: guess ? `${number.first.text} ${digits.slice(0, -1)}/${digits.slice(-1)}` : null,
    })
  }
  if (token.kind === 'vulgar') return reason('notation.second-fraction')
  if (token.kind === 'slash') return reason('notation.second-bar')
  if (token.kind === 'newline') return reason('notation.second-line')
  if (token.kind === 'dash') {
    return reader.peek(2).kind === 'slash' || reader.peek(1).kind === 'vulgar'
      ? reason('notation.subtraction')
      : reason('notation.stray-dash')
  }
  if (token.text === ',') return reason('notation.comma')
  if (token.text === '.') return reason('notation.point-without-digits')
  if (token.text === '?') return reason('notation.question-mark')
  return reason('notation.no-unit')
}
