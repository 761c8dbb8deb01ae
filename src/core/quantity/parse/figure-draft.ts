import { reason } from '../../words/core-words.ts'
import type { Angle } from '../angle.ts'
import type { Figure, FigureOf, Tolerance } from '../figure.ts'
import type { Length } from '../length.ts'
import type { TokenReader } from '../notation/token-reader.ts'
import type { Token } from '../notation/tokenise.ts'
import { type FigureTerm, OF_TERM } from './figure-terms.ts'
import { COUNTED } from './parse-count.ts'
import type { LengthContext } from './parse-length.ts'
import { angleFollows, readAngle } from './read-angle.ts'
import { gaugeFollows, readGauge } from './read-gauge.ts'
import { readLength, type WrittenLength } from './read-length.ts'
import { readTolerance } from './read-tolerance.ts'

/** The parts of one figure as far as it is read, each at most once. */
export interface FigureDraft {
  terms: Set<FigureTerm>
  of?: FigureOf
  count?: number
  counted?: 'holes' | 'places'
  read?: WrittenLength
  length?: Length
  gauge?: Figure['gauge']
  angle?: Angle
  tolerance?: Tolerance<Length>
  angleTolerance?: Tolerance<Angle>
}

/** Adds a term, unless it repeats or contradicts what is there. */
export function addTerm(reader: TokenReader, draft: FigureDraft, term: FigureTerm, token: Token): void {
  if (draft.terms.has(term)) throw reader.error(reason('notation.term-repeated'), token)
  const of = OF_TERM[term]
  const sides = draft.terms.has('outside') || draft.terms.has('inside')
  if (of !== undefined) {
    if (draft.angle || draft.gauge) throw reader.error(reason('notation.term-of-a-length'), token)
    if ((draft.of !== undefined && draft.of !== of) || (sides && (term === 'outside' || term === 'inside'))) {
      throw reader.error(reason('notation.term-contradicts'), token)
    }
    draft.of = of
  }
  if (term === 'drilled') refuseCountLike(reader, draft)
  draft.terms.add(term)
}

/** `4-9/32 DRILL` may be four holes or one size of 4 9/32. */
function refuseCountLike(reader: TokenReader, draft: FigureDraft): void {
  const number = draft.read?.number
  if (number === undefined || draft.count !== undefined || number.form !== 'fraction' || number.n < number.d)
    return
  const either = reason('notation.count-or-size', {
    count: `${number.n / number.d}`,
    size: `${number.n % number.d}/${number.d}`,
  })
  throw reader.error(either, number.first)
}

/** Takes `4 HOLES` or `6 PLACES`; false where none stands. */
export function acceptCount(reader: TokenReader, draft: FigureDraft): boolean {
  const number = reader.peek()
  const word = reader.peek(1)
  const counted = word.kind === 'word' ? COUNTED.get(word.text) : undefined
  if (number.kind !== 'number' || counted === undefined) return false
  if (draft.count !== undefined) throw reader.error(reason('notation.count-repeated'))
  const count = Number(number.text)
  if (number.places > 0 || count < 1 || !Number.isSafeInteger(count)) {
    throw reader.error(reason('notation.count-not-whole', { counted }))
  }
  reader.take(2)
  draft.count = count
  draft.counted = counted
  return true
}

/** Reads the size: a gauge, an angle or a length. */
export function addValue(reader: TokenReader, draft: FigureDraft, context: LengthContext): void {
  const start = reader.peek()
  if (gaugeFollows(reader)) {
    const gauge = readGauge(reader, context.gauge ?? 'us-standard-1893')
    draft.gauge = { number: gauge.number, standard: gauge.standard }
    draft.length = gauge.thickness
  } else if (angleFollows(reader)) {
    draft.angle = readAngle(reader)
  } else {
    draft.read = readLength(reader, context.unit ?? 'in')
    draft.length = draft.read.length
    return
  }
  if (draft.of !== undefined) throw reader.error(reason('notation.length-wanted'), start)
}

/** Reads the tolerance of the size that stands before it. */
export function addTolerance(reader: TokenReader, draft: FigureDraft): void {
  if (draft.tolerance || draft.angleTolerance) throw reader.error(reason('notation.second-tolerance'))
  if (draft.angle) {
    draft.angleTolerance = readTolerance(reader, readAngle)
    return
  }
  if (!draft.length) throw reader.error(reason('notation.tolerance-before-size'))
  const { system } = draft.length
  draft.tolerance = readTolerance(reader, (from) => {
    if (angleFollows(from)) throw from.error(reason('notation.tolerance-not-a-length'))
    return readLength(from, system, false).length
  })
}
