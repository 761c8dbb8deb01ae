import type { Angle } from '../angle.ts'
import type { Figure, FigureOf, Tolerance } from '../figure.ts'
import type { Length } from '../length.ts'
import { NotationReader } from '../notation/token-reader.ts'
import type { Token } from '../notation/tokenise.ts'
import { COUNTED } from './parse-count.ts'
import type { LengthContext } from './parse-length.ts'
import { afterAngle, angleFollows, readAngle } from './read-angle.ts'
import { gaugeFollows, readGauge } from './read-gauge.ts'
import { afterLength, readLength, type WrittenLength } from './read-length.ts'
import { readTolerance, toleranceFollows } from './read-tolerance.ts'

type Term = 'diameter' | 'radius' | 'centres' | 'typical' | 'drilled' | 'outside' | 'inside' | 'square'

const TERMS = new Map<string, Term>([
  ['dia', 'diameter'],
  ['diam', 'diameter'],
  ['diameter', 'diameter'],
  ['r', 'radius'],
  ['rad', 'radius'],
  ['radius', 'radius'],
  ['cc', 'centres'],
  ['ctrs', 'centres'],
  ['centres', 'centres'],
  ['centers', 'centres'],
  ['typ', 'typical'],
  ['typical', 'typical'],
  ['drill', 'drilled'],
  ['drilled', 'drilled'],
  ['od', 'outside'],
  ['id', 'inside'],
  ['sq', 'square'],
  ['square', 'square'],
])

/** Terms that say what a length is of; two of one group contradict each other unless listed as going together. */
const MEANING: Partial<Record<Term, FigureOf>> = {
  diameter: 'diameter',
  drilled: 'diameter',
  outside: 'diameter',
  inside: 'diameter',
  radius: 'radius',
  centres: 'centres',
  square: 'length',
}

/** Collects the parts of one figure, each at most once. */
interface Draft {
  terms: Set<Term>
  of: FigureOf | undefined
  count: number | undefined
  counted: 'holes' | 'places' | undefined
  read: WrittenLength | undefined
  length: Length | undefined
  gauge: Figure['gauge']
  angle: Angle | undefined
  tolerance: Tolerance<Length> | undefined
  angleTolerance: Tolerance<Angle> | undefined
}

/** How many signs a call-out of centres takes: `C.C.`, `C. C.`, `C/C`, `C-C`, `C TO C`. */
function centresLength(reader: NotationReader): number {
  const isC = (token: Token): boolean => token.kind === 'word' && token.text === 'c'
  if (!isC(reader.peek())) return 0
  if (isC(reader.peek(1))) return 2
  const between = reader.peek(1)
  const joins = between.kind === 'slash' || between.kind === 'dash' || between.text === 'to'
  return joins && isC(reader.peek(2)) ? 3 : 0
}

function acceptTerm(reader: NotationReader): { term: Term; token: Token } | undefined {
  const token = reader.peek()
  if (token.kind === 'diameter') return { term: 'diameter', token: reader.take() }
  if (token.kind !== 'word') return undefined
  const centres = centresLength(reader)
  if (centres > 0) return { term: 'centres', token: reader.take(centres) }
  const term = TERMS.get(token.text)
  return term === undefined ? undefined : { term, token: reader.take() }
}

function addTerm(reader: NotationReader, draft: Draft, term: Term, token: Token): void {
  if (draft.terms.has(term)) throw reader.error('This is said twice; write it once.', token)
  const of = MEANING[term]
  const sides = draft.terms.has('outside') || draft.terms.has('inside')
  if (of !== undefined) {
    if (draft.angle || draft.gauge) throw reader.error('Only a length can be that; take this away.', token)
    if ((draft.of !== undefined && draft.of !== of) || (sides && (term === 'outside' || term === 'inside'))) {
      throw reader.error('This contradicts what the figure has said before; keep one of the two.', token)
    }
    draft.of = of
  }
  if (term === 'drilled') refuseCountLike(reader, draft)
  draft.terms.add(term)
}

/** `4-9/32 DRILL` may be four holes or one size of 4 9/32. */
function refuseCountLike(reader: NotationReader, draft: Draft): void {
  const number = draft.read?.number
  if (number === undefined || draft.count !== undefined || number.form !== 'fraction' || number.n < number.d)
    return
  const count = number.n / number.d
  const rest = `${number.n % number.d}/${number.d}`
  throw reader.error(
    `This is either a number of holes or one size; write ${count} ${count === 1n ? 'HOLE' : 'HOLES'} DRILL ${rest}, or DRILL ${count} ${rest}.`,
    number.first,
  )
}

/** Takes `4 HOLES` or `6 PLACES`. */
function acceptCount(reader: NotationReader, draft: Draft): boolean {
  const number = reader.peek()
  const word = reader.peek(1)
  const counted = word.kind === 'word' ? COUNTED.get(word.text) : undefined
  if (number.kind !== 'number' || counted === undefined) return false
  if (draft.count !== undefined) throw reader.error('The number of them is said twice; write it once.')
  const count = Number(number.text)
  if (number.places > 0 || count < 1 || !Number.isSafeInteger(count)) {
    throw reader.error(`The number of ${counted} must be a whole number from 1 up; write it so.`)
  }
  reader.take(2)
  draft.count = count
  draft.counted = counted
  return true
}

function addValue(reader: NotationReader, draft: Draft, context: LengthContext): void {
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
  if (draft.of !== undefined) {
    throw reader.error(
      'The words before it make this figure a length; take them away or write a length.',
      start,
    )
  }
}

function addTolerance(reader: NotationReader, draft: Draft): void {
  if (draft.tolerance || draft.angleTolerance)
    throw reader.error('A second tolerance follows; write one only.')
  if (draft.angle) {
    draft.angleTolerance = readTolerance(reader, readAngle)
    return
  }
  if (!draft.length)
    throw reader.error('A tolerance follows the size that it belongs to; write the size first.')
  const { system } = draft.length
  draft.tolerance = readTolerance(reader, (from) => {
    if (angleFollows(from)) throw from.error('A length has its tolerance as a length; write it so.')
    return readLength(from, system, false).length
  })
}

const EXPECTED =
  'Expected a figure such as 14 3/8", Ø 7 1/2", R 3/16, 4 HOLES DRILL 9/32, No. 16 GA or 47° 30\'.'

function afterValue(reader: NotationReader, draft: Draft): string {
  const { kind } = reader.peek()
  const word = reader.peek()
  if (kind === 'word' && COUNTED.has(word.text)) {
    return `Write how many ${word.text} before the size, as in 4 HOLES DRILL 9/32.`
  }
  if (kind === 'word')
    return 'This word has no fixed meaning in a figure; take it away or write it in a note.'
  if (draft.angle) return afterAngle(reader)
  if (draft.read) return afterLength(reader, draft.read)
  return draft.gauge ? 'Nothing of this kind may follow a gauge; take this away.' : EXPECTED
}

function addNext(reader: NotationReader, draft: Draft, context: LengthContext): void {
  const valued = draft.length !== undefined || draft.angle !== undefined
  const found = acceptTerm(reader)
  if (found) {
    addTerm(reader, draft, found.term, found.token)
    return
  }
  if (acceptCount(reader, draft)) return
  if (
    !valued &&
    (gaugeFollows(reader) || reader.peek().kind === 'number' || reader.peek().kind === 'vulgar')
  ) {
    addValue(reader, draft, context)
    return
  }
  // A lone minus is refused as a tolerance without its other limit; before any size it is a sign.
  if (!valued && reader.peek().kind === 'dash') {
    throw reader.error('A size is never less than nothing; write it without the minus.')
  }
  const unsettled = draft.read !== undefined && draft.read.unit === undefined && reader.peek().kind === 'dash'
  if (toleranceFollows(reader) && !(unsettled && startsMixed(reader))) {
    addTolerance(reader, draft)
    return
  }
  throw reader.error(afterValue(reader, draft))
}

/** A dash right after a bare number, as in `1-38`, was meant to join something. */
function startsMixed(reader: NotationReader): boolean {
  return reader.peek().kind === 'dash' && !reader.peek().spaced
}

function figureFrom(text: string, draft: Draft): Figure {
  const { terms } = draft
  const given = draft.angle ? 'angle' : draft.gauge ? 'gauge' : draft.length ? 'length' : 'count'
  const side = terms.has('outside') ? 'outside' : terms.has('inside') ? 'inside' : undefined
  return {
    text,
    of: draft.of ?? given,
    ...(draft.length && { length: draft.length }),
    ...(draft.angle && { angle: draft.angle }),
    ...(draft.gauge && { gauge: draft.gauge }),
    ...(draft.count !== undefined && { count: draft.count }),
    ...(draft.counted && { counted: draft.counted }),
    ...(draft.tolerance && { tolerance: draft.tolerance }),
    ...(draft.angleTolerance && { angleTolerance: draft.angleTolerance }),
    typical: terms.has('typical'),
    drilled: terms.has('drilled'),
    ...(side && { side }),
    ...(terms.has('square') && { square: true }),
  }
}

/**
 * Reads a printed dimension as it stands on the sheet: one size (a length, an angle or a sheet gauge), with what it is
 * of (`Ø`, `DIA.`, `R`, `C.C.`, `O.D.`, `SQ.`, `DRILL`), how many (`4 HOLES`), its tolerance (`±1/32`, `+0 −1/64`) and
 * `TYP.`, in any order and either case; or a bare count. A bare number in a tolerance has the unit of its size.
 *
 * @param context what a bare number and a gauge number mean
 * @throws NotationError with the place where reading stopped, for anything that has no single meaning
 */
export function parseFigure(text: string, context: LengthContext = {}): Figure {
  const reader = new NotationReader(text)
  const draft: Draft = {
    terms: new Set(),
    of: undefined,
    count: undefined,
    counted: undefined,
    read: undefined,
    length: undefined,
    gauge: undefined,
    angle: undefined,
    tolerance: undefined,
    angleTolerance: undefined,
  }
  while (!reader.atEnd()) addNext(reader, draft, context)
  const sized = draft.length !== undefined || draft.angle !== undefined
  if (!sized && (draft.count === undefined || draft.terms.size > 0)) throw reader.error(EXPECTED)
  return figureFrom(text, draft)
}
