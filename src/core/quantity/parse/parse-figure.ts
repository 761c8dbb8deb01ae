import { reason } from '../../words/core-words.ts'
import type { NotationReason } from '../../words/notation.ts'
import type { Figure } from '../figure.ts'
import type { Length } from '../length.ts'
import { TokenReader } from '../notation/token-reader.ts'
import { acceptCount, fractionLength } from './accept-count.ts'
import { acceptWords } from './accept-words.ts'
import { acceptAfterSize, acceptMetricThread } from './after-size.ts'
import { addOf, addWords, countOrWhole, type FigureDraft, isValued, soundTolerance } from './figure-draft.ts'
import { settleInchThread } from './inch-threads.ts'
import { COUNTED } from './parse-count.ts'
import type { LengthContext } from './parse-length.ts'
import { afterAngle, angleFollows, readAngle } from './read-angle.ts'
import { acceptBracket } from './read-bracket.ts'
import { gaugeFollows, readGauge } from './read-gauge.ts'
import { afterLength, readLength, type WrittenLength } from './read-length.ts'
import { acceptSlope } from './read-slope.ts'
import { readTolerance, toleranceFollows } from './read-tolerance.ts'

/** What to say of a sign that begins no part of a figure. */
function afterPart(reader: TokenReader, draft: FigureDraft): NotationReason {
  const { kind, text } = reader.peek()
  if (kind === 'word' && COUNTED.has(text)) return reason('notation.count-after-size', { counted: text })
  if (kind === 'word') return reason('notation.word-unknown')
  if (draft.angle) return afterAngle(reader)
  if (draft.read) return afterLength(reader, draft.read)
  return reason(draft.gauge ? 'notation.after-gauge-figure' : 'notation.figure-expected')
}

/** Takes HOLES or PLACES after the size where the number of them stands before it: `4-9/16 HOLES`. */
function acceptCounted(reader: TokenReader, draft: FigureDraft): boolean {
  const word = reader.peek()
  const counted = word.kind === 'word' ? COUNTED.get(word.text) : undefined
  if (counted === undefined || !isValued(draft)) return false
  if (draft.count === undefined || draft.counted !== undefined || draft.fastener !== undefined) return false
  reader.take()
  draft.counted = counted
  return true
}

/** Takes a sign that only parts one thing from the next: `R = 3/16`, `8 BOLTS – 5/8`, `DRILL 9/32, 4 HOLES`. */
function skipParting(reader: TokenReader, draft: FigureDraft): boolean {
  const sign = reader.peek()
  const after = reader.peek(1)
  if (sign.text === '@' && draft.count !== undefined && !isValued(draft)) {
    addOf(reader, draft, 'centres', reader.take())
    return true
  }
  const begun = draft.terms.size > 0 || draft.count !== undefined || draft.notes.length > 0 || isValued(draft)
  if (!begun || after.kind === 'end') return false
  const parts =
    (sign.text === '=' && !isValued(draft)) ||
    ((sign.text === ',' || sign.text === ';') && (after.spaced || after.kind !== 'number')) ||
    (sign.kind === 'dash' && !isValued(draft) && draft.count !== undefined && sign.spaced && after.spaced)
  if (parts) reader.take()
  return parts
}

/** Reads the size: a gauge, an angle, a slope or a length. */
function addValue(reader: TokenReader, draft: FigureDraft, context: LengthContext): void {
  const start = reader.peek()
  draft.sizeAt = reader.mark()
  if (gaugeFollows(reader)) {
    const gauge = readGauge(reader, context.gauge)
    const { number, standard, assumed } = gauge
    draft.gauge = { number, standard, ...(assumed && { assumed }) }
    draft.length = gauge.thickness
  } else if (angleFollows(reader)) {
    draft.angle = readAngle(reader)
  } else {
    const slope = draft.of === undefined ? acceptSlope(reader, draft.slopeSaid) : undefined
    if (slope === undefined) {
      draft.read = readLength(reader, context.unit ?? 'in')
      draft.length = draft.read.length
      return
    }
    draft.slope = slope
  }
  if (draft.of !== undefined) throw reader.error(reason('notation.length-wanted'), start)
}

/** Reads the tolerance of the size that stands before it. */
function addTolerance(reader: TokenReader, draft: FigureDraft): void {
  if (draft.tolerance || draft.angleTolerance || draft.fit)
    throw reader.error(reason('notation.second-tolerance'))
  if (draft.limit !== undefined) throw reader.error(reason('notation.limit-and-tolerance'))
  const at = reader.peek()
  if (draft.angle) {
    draft.angleTolerance = soundTolerance(reader, readTolerance(reader, readAngle), at)
    return
  }
  if (!draft.length) throw reader.error(reason('notation.tolerance-before-size'))
  const { system } = draft.length
  const tolerance = readTolerance(reader, (from) => {
    if (angleFollows(from)) throw from.error(reason('notation.tolerance-not-a-length'))
    return readLength(from, system, false).length
  })
  draft.tolerance = soundTolerance(reader, tolerance, at)
}

function addNext(reader: TokenReader, draft: FigureDraft, context: LengthContext): void {
  const valued = isValued(draft)
  if (skipParting(reader, draft)) return
  if (acceptCount(reader, draft, context.unit ?? 'in') || acceptCounted(reader, draft)) return
  if (acceptBracket(reader, draft, context)) return
  if (valued && acceptAfterSize(reader, draft, context)) return
  const found = acceptWords(reader)
  if (found) {
    addWords(reader, draft, found)
    return
  }
  const { kind } = reader.peek()
  if (!valued && acceptMetricThread(reader, draft)) return
  if (!valued && (gaugeFollows(reader) || kind === 'number' || kind === 'vulgar')) {
    addValue(reader, draft, context)
    return
  }
  // A lone minus is refused as a tolerance without its other limit; before any size it is a sign.
  if (!valued && kind === 'dash') throw reader.error(reason('notation.length-negative'))
  const unsettled = draft.read !== undefined && draft.read.unit === undefined && kind === 'dash'
  if (unsettled && fractionAfterGap(reader)) throw reader.error(gapBeforeFraction(reader, draft))
  if (toleranceFollows(reader) && !(unsettled && startsMixed(reader))) {
    addTolerance(reader, draft)
    return
  }
  throw reader.error(afterPart(reader, draft))
}

/** A dash right after a bare number, as in `1-38`, was meant to join something. */
function startsMixed(reader: TokenReader): boolean {
  return reader.peek().kind === 'dash' && !reader.peek().spaced
}

/** A fraction of a millimetre, which nobody draws to. */
const isBareFraction = ({ number, unit }: WrittenLength, { system }: Length): boolean =>
  number.form === 'fraction' && unit === undefined && system === 'mm'

/** `1.250`: three places after a point, which on a metric sheet may part thousands. */
const mayBeThousands = ({ number: { first, n, d } }: WrittenLength, { system }: Length): boolean =>
  system === 'mm' && first.kind === 'number' && first.places === 3 && !first.comma && n >= d && n < 1000n * d

/** A dash with gaps, and then a fraction that nothing but words follows: `8 – 5/8`. */
const fractionAfterGap = (reader: TokenReader): boolean =>
  reader.peek().spaced &&
  reader.peek(1).spaced &&
  fractionLength(reader, 1) > 0 &&
  !/[+-]/.test(reader.peek(1 + fractionLength(reader, 1)).text)

function gapBeforeFraction(reader: TokenReader, { read }: FigureDraft): NotationReason {
  const size = reader.text.slice(reader.peek(1).at, reader.peek(fractionLength(reader, 1)).end)
  return countOrWhole(read?.number.first.text ?? '', size, true)
}

function figureFrom(text: string, draft: FigureDraft, decimalComma: boolean): Figure {
  const { terms, notes, of, mayBeSection, read, sizeAt: __, open: ___, slopeSaid, slope, ...parts } = draft
  const given = draft.angle
    ? 'angle'
    : slope
      ? 'slope'
      : draft.gauge
        ? 'gauge'
        : draft.length
          ? 'length'
          : 'count'
  const side = terms.has('outside') ? 'outside' : terms.has('inside') ? 'inside' : undefined
  return {
    text,
    of: given === 'count' ? given : (of ?? given),
    ...parts,
    ...(slope && { slope: slopeSaid === undefined ? slope : { ...slope, taper: slopeSaid.taper } }),
    typical: terms.has('typical'),
    drilled: terms.has('drilled'),
    ...(side && { side }),
    ...(terms.has('square') && { square: true }),
    // An angle, and what is round, square or between centres, is no section of bar.
    ...(mayBeSection && given === 'length' && of === undefined && { mayBeSection }),
    ...(decimalComma && { decimalComma }),
    ...(read && draft.length && isBareFraction(read, draft.length) && { bareFraction: true as const }),
    ...(read && draft.length && mayBeThousands(read, draft.length) && { mayBeThousands: true as const }),
    ...(notes.length > 0 && { notes }),
  }
}

/** What of a figure does not go together, though each part of it can be read. */
function checkWhole(reader: TokenReader, draft: FigureDraft): void {
  const sized = isValued(draft)
  const { thread, twoLimits, fit, terms } = draft
  const ofHole = terms.has('drilled') || terms.has('outside') || terms.has('inside')
  const threadOfMore = thread !== undefined && (twoLimits !== undefined || fit !== undefined || ofHole)
  if (threadOfMore || (draft.counted !== undefined && draft.fastener !== undefined)) {
    throw reader.error(reason('notation.term-contradicts'))
  }
  if (draft.open) throw reader.error(reason('notation.bracket-open'))
  if (!sized && (draft.count === undefined || saysMore(draft))) {
    throw reader.error(reason('notation.figure-expected'))
  }
  if (draft.slopeSaid !== undefined && draft.slope === undefined) {
    throw reader.error(reason('notation.slope-expected'))
  }
  if (draft.slope === undefined) return
  if (draft.limit ?? draft.looseness ?? draft.fastener ?? draft.thread ?? draft.of) {
    throw reader.error(reason('notation.term-of-a-length'))
  }
}

/** A bare number of them is one of spaces: `6 EQ. SP.` */
const areSpaces = ([first, ...more]: readonly string[]): boolean =>
  more.length === 0 && (first === 'EQ. SP.' || first === 'SPACES')

/** Whether there is more than a number of things, which a size must go with. */
const saysMore = ({
  terms,
  of,
  fastener,
  notes,
  counted,
  limit,
  reference,
  looseness,
  thread,
}: FigureDraft) =>
  terms.size > 0 ||
  (of !== undefined && fastener === undefined) ||
  (counted === undefined && fastener === undefined && !areSpaces(notes)) ||
  (limit ?? reference ?? looseness ?? thread) !== undefined

/**
 * Reads a printed dimension as it stands on the sheet: one size (a length, an angle, a slope or a sheet gauge), with what
 * it is of (`Ø`, `DIA.`, `R`, `C.C.`, `O.D.`, `SQ.`, `DRILL`, `BORE`, `P.C.D.`), how many (`4 HOLES`, `8 – 5/8 BOLTS`, `4X`),
 * its tolerance (`±1/32`, `+0 −1/64`, `H7`) or two limits (`1.500/1.498`), what loosens it (`MAX.`, `REF.`, `ABT.`, `FULL`,
 * `N.T.S.`) and `TYP.`, in any order and either case; or a bare count. Words that say nothing of the size are kept as notes,
 * those without a fixed meaning are refused. A bare number in a tolerance has the unit of its size.
 *
 * @param context what a bare number and a gauge number mean
 * @throws NotationError with the place where reading stopped, for anything that has no single meaning
 */
export function parseFigure(text: string, context: LengthContext = {}): Figure {
  const reader = new TokenReader(text)
  const draft: FigureDraft = { terms: new Set(), notes: [] }
  while (!reader.atEnd()) addNext(reader, draft, context)
  settleInchThread(reader, draft)
  checkWhole(reader, draft)
  return figureFrom(text, draft, reader.decimalComma)
}
