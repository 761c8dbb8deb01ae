import Fraction from 'fraction.js'
import { reason } from '../../words/core-words.ts'
import type { GaugeStandard } from '../gauges.ts'
import { type Length, type LengthUnit, MM_PER_INCH } from '../length.ts'
import { TokenReader } from '../notation/token-reader.ts'
import type { Token } from '../notation/tokenise.ts'
import { gaugeFollows, readGauge } from './read-gauge.ts'
import { afterLength, readLength } from './read-length.ts'
import { readNumber } from './read-number.ts'

/** What is to be known to read a length. */
export interface LengthContext {
  /** What a bare number means; inches unless said otherwise. */
  readonly unit?: LengthUnit
  /** What a sheet gauge means that does not name its standard; the US Standard of 1893 unless said otherwise. */
  readonly gauge?: GaugeStandard
  /** Whether the quantity can be less than 0, as a correction can; a printed dimension can't. */
  readonly signed?: boolean
}

/** Reads the remainder of a value that is off its graduation, as in `14 3/8" + 0.006"`, and adds it. */
function withRemainder(reader: TokenReader, base: Length, unit: Token | undefined): Length {
  const sign = reader.peek()
  if (unit === undefined || base.system !== 'in' || (sign.kind !== 'plus' && sign.kind !== 'dash'))
    return base
  reader.take()
  const number = readNumber(reader, reason('notation.remainder-expected'))
  if (number.form !== 'decimal' || number.n >= number.d) {
    throw reader.error(reason('notation.remainder-not-decimal'), number.first)
  }
  if (!reader.accept('inch')) throw reader.error(reason('notation.remainder-unmarked'))
  const mm = MM_PER_INCH.mul(new Fraction(number.n, number.d))
  return {
    ...base,
    mm: sign.kind === 'plus' ? base.mm.add(mm) : base.mm.sub(mm),
    graduation: MM_PER_INCH.div(new Fraction(number.parts, 1n)),
  }
}

/**
 * Reads a length in shop notation, exactly.
 *
 * Feet and inches (`1'-2 3/8"`, `1 ft 2-3/8 in`), inches (`14⅜`, `2.375"`, `.375`), metric (`365.1 mm`, `36.5 cm`,
 * `1.2 m`), mils, sheet gauges (`No. 16 GA`), with any of the usual dashes, spaces, primes and quotes, and stacked
 * fractions over two lines (see `readNumber`). A value off its graduation may carry its remainder, as tables
 * made before had it: `14 3/8" + 0.006"`.
 *
 * @throws NotationError with the place where reading stopped, for anything that has no single meaning
 */
export function parseLength(text: string, context: LengthContext = {}): Length {
  const reader = new TokenReader(text)
  const minus = reader.peek()
  if (minus.kind === 'dash') {
    if (!context.signed) throw reader.error(reason('notation.length-negative'))
    reader.take()
  }
  if (gaugeFollows(reader)) {
    if (minus.kind === 'dash') throw reader.error(reason('notation.gauge-signed'), minus)
    const { thickness } = readGauge(reader, context.gauge)
    if (!reader.atEnd()) throw reader.error(reason('notation.after-gauge'))
    return thickness
  }
  const read = readLength(reader, context.unit ?? 'in')
  const base = minus.kind === 'dash' ? { ...read.length, mm: read.length.mm.neg() } : read.length
  const length = withRemainder(reader, base, read.unit)
  if (!reader.atEnd()) throw reader.error(afterLength(reader, read))
  return length
}
