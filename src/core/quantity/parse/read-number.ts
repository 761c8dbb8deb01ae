import type { NotationReader } from '../notation/token-reader.ts'
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

const isWhole = (token: Token): boolean => token.kind === 'number' && token.places === 0

/** How many signs the fraction bar after the sign at `ahead` takes: 0 when there is none. */
function barLength(reader: NotationReader, ahead: number): number {
  const kind = reader.peek(ahead).kind
  if (kind === 'slash') return 1
  if (kind !== 'newline') return 0
  let line = ahead + 1
  while (reader.peek(line).kind === 'dash' || reader.peek(line).kind === 'bar') line += 1
  if (line === ahead + 1) return isWhole(reader.peek(line)) ? 1 : 0
  return reader.peek(line).kind === 'newline' ? line + 1 - ahead : 0
}

function fractionAfter(reader: NotationReader, numerator: Token, whole: Token | undefined): [bigint, bigint] {
  const stacked = reader.peek().kind === 'newline'
  reader.take(barLength(reader, 0))
  const denominator = reader.peek()
  if (!isWhole(denominator))
    throw reader.error('The number below the fraction bar is missing; write it as in 3/8.')
  const n = BigInt(numerator.text)
  const d = BigInt(denominator.text)
  if (d === 0n) throw reader.error('No fraction has 0 below its bar; write the number of parts, as in 3/8.')
  if (n >= d) {
    const above = numerator.text
    const rest = n % d === 0n ? '' : ` ${n % d}/${d}`
    const lead = whole ? BigInt(whole.text) : 0n
    const lost =
      !whole && above.length > 1 && BigInt(above.slice(1)) < d
        ? `, or ${above[0]} ${above.slice(1)}/${d} if a gap was lost`
        : ''
    const advice = `${stacked ? 'The upper' : 'The first'} number of a fraction must be smaller than the second; write ${lead + n / d}${rest}${lost}.`
    throw reader.error(advice, numerator)
  }
  reader.take()
  return [n, d]
}

/**
 * How many signs stand between a whole number and its fraction: none after a space or before a single character such as
 * `⅜`, one for a dash; undefined when no fraction can follow.
 */
function jointLength(reader: NotationReader, joins: boolean): number | undefined {
  const token = reader.peek()
  if (token.kind === 'vulgar' || (isWhole(token) && token.spaced)) return 0
  if (token.kind !== 'dash' || !joins) return undefined
  const after = reader.peek(1)
  const fraction = after.kind === 'vulgar' || (isWhole(after) && barLength(reader, 2) > 0)
  // With a gap on either side it may be a minus, or begin a tolerance.
  return fraction && !token.spaced && !after.spaced ? 1 : undefined
}

/**
 * Reads a number as the trade writes it: `14`, `2.375`, `.375`, `3/8`, `14 3/8`, `14-3/8`, `14⅜`.
 *
 * A stacked fraction is read over two lines: the line end stands for the bar, and a line of dashes between the two may
 * stand for it too. The upper line holds the whole number, a space and the upper number; the lower line the lower one.
 *
 * @param joins whether a dash may join whole number and fraction; not so where a dash is a minus
 * @throws NotationError
 */
export function readNumber(reader: NotationReader, expected: string, joins = true): WrittenNumber {
  const first = reader.peek()
  if (first.kind === 'vulgar') {
    reader.take()
    const [n, d] = VULGAR.get(first.text) ?? [0n, 1n]
    return { n, d, parts: d, form: 'fraction', first }
  }
  if (first.kind !== 'number') throw reader.error(expected)
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
  if (start.kind === 'vulgar') {
    reader.take(skip + 1)
    const [n, d] = VULGAR.get(start.text) ?? [0n, 1n]
    return { n: whole * d + n, d, parts: d, form: 'fraction', first }
  }
  if (barLength(reader, skip + 1) === 0) {
    // Left to the caller: a second number may have a meaning of its own, as in `4 HOLES`.
    return { n: whole, d: 1n, parts: 1n, form: 'whole', first }
  }
  reader.take(skip + 1)
  const [n, d] = fractionAfter(reader, start, first)
  return { n: whole * d + n, d, parts: d, form: 'fraction', first }
}

/** What to say of a sign that cannot follow a number. */
export function afterNumber(reader: NotationReader, number: WrittenNumber): string {
  const token = reader.peek()
  if (token.kind === 'number') {
    const digits = token.text
    const guess = digits.length > 1 && number.form === 'whole' && token.places === 0
    const hint = guess ? `, for instance ${number.first.text} ${digits.slice(0, -1)}/${digits.slice(-1)}` : ''
    return `Two numbers stand side by side; write the fraction with its bar${hint}.`
  }
  if (token.kind === 'vulgar') return 'A second fraction follows; write one number only.'
  if (token.kind === 'slash') return 'A second fraction bar follows; a fraction has one, as in 3/8.'
  if (token.kind === 'newline') return 'A second line follows; write the quantity on one line, as in 14 3/8.'
  if (token.kind === 'dash') {
    return reader.peek(2).kind === 'slash' || reader.peek(1).kind === 'vulgar'
      ? 'This reads as a subtraction; write 14-3/8 without gaps for a whole number and a fraction.'
      : 'A dash joins feet and inches, as in 1\'-2", or a whole number and a fraction, as in 1-3/8; write it so.'
  }
  if (token.text === ',') return 'Write decimals with a point and thousands without a comma.'
  if (token.text === '.') return 'A point needs digits after it; write 5 or 5.0.'
  return 'Only a unit may follow here: \', ", ft, in, mm, cm or m.'
}
