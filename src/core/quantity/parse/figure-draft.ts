import { reason } from '../../words/core-words.ts'
import type { NotationReason } from '../../words/notation.ts'
import type { Angle } from '../angle.ts'
import type { Figure, FigureOf, Tolerance } from '../figure.ts'
import type { Length } from '../length.ts'
import type { TokenReader } from '../notation/token-reader.ts'
import type { Token } from '../notation/tokenise.ts'
import type { TakenWords } from './accept-words.ts'
import type { FigureTerm } from './figure-words.ts'
import type { WrittenLength } from './read-length.ts'

type Writable<T> = { -readonly [K in keyof T]: T[K] }

/** The parts of one figure as far as it is read, each at most once. */
export interface FigureDraft
  extends Partial<Writable<Omit<Figure, 'text' | 'typical' | 'drilled' | 'side' | 'square' | 'notes'>>> {
  readonly terms: Set<FigureTerm>
  readonly notes: string[]
  read?: WrittenLength
  /** Where the size begins. */
  sizeAt?: number
  /** A bracket was opened before the size and is not closed yet. */
  open?: boolean
  /** TAPER or SLOPE stands before its size. */
  slopeSaid?: { readonly taper: boolean }
}

export const isValued = ({ length, angle, slope }: FigureDraft): boolean =>
  length !== undefined || angle !== undefined || slope !== undefined

/** What a length is of by a term; two that differ contradict each other. */
const OF_TERM: Readonly<Partial<Record<FigureTerm, FigureOf>>> = {
  diameter: 'diameter',
  drilled: 'diameter',
  outside: 'diameter',
  inside: 'diameter',
  radius: 'radius',
  centres: 'centres',
  square: 'length',
}

/** Says what the size is of, unless that contradicts what is there. */
export function addOf(reader: TokenReader, draft: FigureDraft, of: FigureOf, token: Token): void {
  if (draft.angle || draft.gauge || draft.slope)
    throw reader.error(reason('notation.term-of-a-length'), token)
  if (draft.of !== undefined && draft.of !== of)
    throw reader.error(reason('notation.term-contradicts'), token)
  draft.of = of
}

function addTerm(reader: TokenReader, draft: FigureDraft, term: FigureTerm, token: Token): void {
  if (draft.terms.has(term)) throw reader.error(reason('notation.term-repeated'), token)
  const of = OF_TERM[term]
  const sides = draft.terms.has('outside') || draft.terms.has('inside')
  if (sides && (term === 'outside' || term === 'inside')) {
    throw reader.error(reason('notation.term-contradicts'), token)
  }
  if (of !== undefined) addOf(reader, draft, of, token)
  if (term === 'drilled') refuseCountLike(reader, draft, false)
  draft.terms.add(term)
}

/**
 * `4-9/32 DRILL` may be four holes or one size of 4 9/32.
 *
 * @param dashed whether only a dash makes it doubtful, where sizes above an inch are usual
 */
function refuseCountLike(reader: TokenReader, draft: FigureDraft, dashed: boolean): void {
  const number = draft.read?.number
  if (number === undefined || draft.count !== undefined || number.form !== 'fraction' || number.n < number.d)
    return
  if (dashed && !number.dashed) return
  const either = reason('notation.count-or-size', {
    count: `${number.n / number.d}`,
    size: `${number.n % number.d}/${number.d}`,
  })
  throw reader.error(either, number.first)
}

/** `2 3/8 PLATES` may be two plates of 3/8 or plates of one size. */
function refuseWhole(reader: TokenReader, draft: FigureDraft): void {
  const number = draft.read?.number
  if (number === undefined || draft.count !== undefined || number.form !== 'fraction' || number.n < number.d)
    return
  throw reader.error(
    countOrWhole(`${number.n / number.d}`, `${number.n % number.d}/${number.d}`),
    number.first,
  )
}

/**
 * A whole number before a fraction that may be how many there are.
 * @param orTolerance whether a dash between them may be a minus
 */
export const countOrWhole = (count: string, size: string, orTolerance = false): NotationReason =>
  reason('notation.count-or-whole', { count, size, orTolerance })

function once<K extends keyof FigureDraft>(
  reader: TokenReader,
  draft: FigureDraft,
  key: K,
  value: FigureDraft[K],
  token: Token,
): void {
  if (draft[key] !== undefined) {
    throw reader.error(
      reason(draft[key] === value ? 'notation.term-repeated' : 'notation.term-contradicts'),
      token,
    )
  }
  draft[key] = value
}

export function addNote(reader: TokenReader, draft: FigureDraft, note: string, token: Token): void {
  if (draft.notes.includes(note)) throw reader.error(reason('notation.term-repeated'), token)
  draft.notes.push(note)
}

/** Machined holes, which a drawing gives by their number and size. */
const MACHINED: ReadonlySet<string> = new Set(['REAM', 'TAP', 'PUNCH', 'BORE', 'HOLE'])

/** Adds what words say, unless it repeats or contradicts what is there. */
export function addWords(reader: TokenReader, draft: FigureDraft, { meaning, token }: TakenWords): void {
  switch (meaning.says) {
    case 'term':
      addTerm(reader, draft, meaning.term, token)
      return
    case 'note':
      if (meaning.of !== undefined) addOf(reader, draft, meaning.of, token)
      if (MACHINED.has(meaning.note)) refuseCountLike(reader, draft, true)
      if (meaning.several) refuseWhole(reader, draft)
      addNote(reader, draft, meaning.note, token)
      return
    case 'limit':
      if (draft.tolerance || draft.twoLimits)
        throw reader.error(reason('notation.limit-and-tolerance'), token)
      once(reader, draft, 'limit', meaning.limit, token)
      return
    case 'reference':
      once(reader, draft, 'reference', true, token)
      return
    case 'not-to-scale':
      once(reader, draft, 'notToScale', true, token)
      return
    case 'looseness':
      once(reader, draft, 'looseness', meaning.looseness, token)
      return
    case 'fastener':
      addOf(reader, draft, 'diameter', token)
      if (draft.count === undefined) refuseCountLike(reader, draft, !meaning.several)
      once(reader, draft, 'fastener', meaning.fastener, token)
      return
    case 'thread':
      addOf(reader, draft, 'diameter', token)
      once(reader, draft, 'thread', { form: meaning.form }, token)
      return
    case 'slope':
      once(reader, draft, 'slopeSaid', { taper: meaning.taper }, token)
      return
    case 'pipe':
      throw reader.error(reason('notation.nominal-pipe'), token)
  }
}

/** A draft's tolerance, refused where there is none at all. */
export function soundTolerance<T extends Length | Angle>(
  reader: TokenReader,
  tolerance: Tolerance<T>,
  at: Token,
): Tolerance<T> {
  const isNothing = (size: T): boolean => ('mm' in size ? size.mm : size.degrees).n === 0n
  if (isNothing(tolerance.plus) && isNothing(tolerance.minus)) {
    throw reader.error(reason('notation.tolerance-of-nothing'), at)
  }
  return tolerance
}
