import { NotationError } from '../../quantity/notation/notation-error.ts'
import { parseAngle } from '../../quantity/parse/parse-angle.ts'
import { parseArea } from '../../quantity/parse/parse-area.ts'
import { parseCount } from '../../quantity/parse/parse-count.ts'
import { type KnownSizeOf, parseKnownSize } from '../../quantity/parse/parse-known-size.ts'
import { parseLength } from '../../quantity/parse/parse-length.ts'
import { parseAngleTolerance, parseTolerance } from '../../quantity/parse/parse-tolerance.ts'
import type { QuantityKind } from '../../quantity/quantity-kind.ts'
import type { QuantityNoun } from '../../words/job.ts'
import { lengthContext } from '../model/length-context.ts'
import type { QuantityMeaning } from '../model/meaning.ts'
import type { Job } from '../model/types.ts'

/** How a quantity is to be written: what that is called, and the notations that are tried, the likeliest first. */
interface Notation {
  readonly noun: QuantityNoun
  readonly parsers: readonly ((text: string, job: Job) => unknown)[]
}

const length = (text: string, job: Job) => parseLength(text, lengthContext(job))
const signedLength = (text: string, job: Job) => parseLength(text, { ...lengthContext(job), signed: true })
const angle = (text: string) => parseAngle(text)
const signedAngle = (text: string) => parseAngle(text, { signed: true })
const area = (text: string) => parseArea(text)
const count = (text: string) => parseCount(text)

const LENGTH: Notation = { noun: 'length', parsers: [length] }
const ANGLE: Notation = { noun: 'angle', parsers: [angle] }
const AREA: Notation = { noun: 'area', parsers: [area] }
const COUNT: Notation = { noun: 'count', parsers: [count] }
const TOLERANCE: Notation = {
  noun: 'tolerance',
  parsers: [(text, { unit }) => parseTolerance(text, { unit })],
}

const READINGS: Readonly<Record<QuantityKind, Notation>> = {
  length: LENGTH,
  angle: ANGLE,
  area: AREA,
  count: COUNT,
}

const TOLERANCES: Readonly<Record<QuantityKind, Notation>> = {
  length: TOLERANCE,
  angle: { noun: 'tolerance of an angle', parsers: [(text) => parseAngleTolerance(text)] },
  area: AREA,
  count: COUNT,
}

/** A bore that has worn wider has lost less than 0 of its diameter. */
const LOSSES: Readonly<Record<QuantityKind, Notation>> = {
  length: { noun: 'length', parsers: [signedLength] },
  angle: { noun: 'angle', parsers: [signedAngle] },
  area: AREA,
  count: COUNT,
}

/** What a quantity stands in. */
export interface Around {
  /** Of the dimension. */
  readonly kind: QuantityKind | undefined
  /** Of the figured size. */
  readonly size: KnownSizeOf | undefined
}

/** How a quantity is to be written; undefined for a figure, which may be illegible. */
function notationOf(meaning: QuantityMeaning, { kind, size }: Around): Notation | undefined {
  switch (meaning) {
    case 'length':
      return LENGTH
    case 'size':
      return {
        noun: 'length',
        parsers: [(text, job) => parseKnownSize(text, size, lengthContext(job))],
      }
    case 'length or angle':
      return { noun: 'length or angle', parsers: [length, angle] }
    case 'tolerance':
      return TOLERANCE
    case 'slack':
      return { noun: 'slack', parsers: [length, angle, area] }
    case 'figure':
      return undefined
    case 'tolerance of the dimension':
      return kind && TOLERANCES[kind]
    case 'reading of the dimension':
      return kind && READINGS[kind]
    case 'loss of the dimension':
      return kind && LOSSES[kind]
  }
}

/**
 * Why a text is no quantity of its meaning: what it should be, and where reading it as the likeliest stopped; null when
 * it is one.
 *
 * @param around what it stands in
 */
export function notationProblem(
  text: string,
  meaning: QuantityMeaning,
  around: Around,
  job: Job,
): { noun: QuantityNoun; error: NotationError } | null {
  const notation = notationOf(meaning, around)
  if (notation === undefined) return null
  let first: NotationError | undefined
  for (const parse of notation.parsers) {
    try {
      parse(text, job)
      return null
    } catch (error) {
      if (!(error instanceof NotationError)) throw error
      first ??= error
    }
  }
  return first === undefined ? null : { noun: notation.noun, error: first }
}
