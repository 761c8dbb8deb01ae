import Fraction from 'fraction.js'
import { reason } from '../../words/core-words.ts'
import type { Slope } from '../figure.ts'
import { exactPlaces, mixedNumber, toPlaces } from '../format/decimals.ts'
import { NotationError } from '../notation/notation-error.ts'
import type { TokenReader } from '../notation/token-reader.ts'
import { wordsAhead } from './accept-words.ts'
import { COUNTED } from './parse-count.ts'
import { readNumber, type WrittenNumber } from './read-number.ts'

const IN: ReadonlySet<string> = new Set(['in'])
const PER: ReadonlySet<string> = new Set(['per'])
const FOOT: ReadonlySet<string> = new Set(['ft', 'foot'])

const fraction = ({ n, d }: WrittenNumber): Fraction => new Fraction(n, d)

/** A number with or without its inch mark. */
function plainNumber(reader: TokenReader): { number: WrittenNumber; inches: boolean } {
  const number = readNumber(reader, reason('notation.slope-expected'))
  return { number, inches: reader.accept('inch') !== undefined }
}

/** As a fraction where its parts are those of a rule, otherwise in decimals where these write it. */
function plainText(value: Fraction): string {
  const places = exactPlaces(value)
  const ofARule = (value.d & (value.d - 1n)) === 0n
  return ofARule || places === undefined ? mixedNumber(value.n, value.d) : toPlaces(value, places)
}

function slopeOf(rise: Fraction, run: Fraction, taper: boolean): Slope | undefined {
  // What rises more than it runs was hardly meant as a slope: `5 in 3/8` has lost something.
  if (rise.n === 0n || rise.compare(run) > 0 || run.compare(1) <= 0) return undefined
  return { rise: plainText(rise), run: plainText(run), taper }
}

function slopeAt(reader: TokenReader, said: { readonly taper: boolean } | undefined): Slope | undefined {
  const rise = plainNumber(reader)
  if (reader.peek().text === ':') {
    const colon = reader.take()
    const run = plainNumber(reader)
    const after = wordsAhead(reader)?.meaning
    const by = said ?? (after?.says === 'slope' ? after : undefined)
    if (by === undefined) throw new RatioUnsaid(reader.text, colon.at)
    return slopeOf(fraction(rise.number), fraction(run.number), by.taper)
  }
  const inWord = reader.acceptWord(IN) !== undefined
  if (reader.acceptWord(PER)) {
    if (!reader.acceptWord(FOOT)) return undefined
    return slopeOf(fraction(rise.number), new Fraction(12n, 1n), said?.taper ?? false)
  }
  if (!inWord) return undefined
  const run = plainNumber(reader)
  if (rise.inches !== run.inches) return undefined
  // `2 IN 3 HOLES`: the number is that of the holes.
  if (reader.peek().kind === 'word' && COUNTED.has(reader.peek().text)) return undefined
  return slopeOf(fraction(rise.number), fraction(run.number), said?.taper ?? false)
}

/** A ratio of which nothing says whether it is a taper or a scale. */
class RatioUnsaid extends NotationError {
  constructor(text: string, at: number) {
    super(text, at, reason('notation.ratio-unsaid'))
  }
}

/**
 * Reads a slope or taper: `1 IN 8`, `3/4" IN 12"`, `3/4 PER FT.`, `TAPER 1:12`; undefined, at the same place, where none
 * stands.
 *
 * @param said TAPER or SLOPE before it
 * @throws NotationError for a ratio that may be a scale
 */
export function acceptSlope(
  reader: TokenReader,
  said: { readonly taper: boolean } | undefined,
): Slope | undefined {
  const start = reader.mark()
  let slope: Slope | undefined
  try {
    slope = slopeAt(reader, said)
  } catch (error) {
    if (!(error instanceof NotationError) || error instanceof RatioUnsaid) throw error
  }
  if (slope === undefined) reader.backTo(start)
  return slope
}
