import Fraction from 'fraction.js'
import { reason } from '../../words/core-words.ts'
import type { NotationReason } from '../../words/notation.ts'
import type { Angle } from '../angle.ts'
import type { TokenReader } from '../notation/token-reader.ts'
import type { Token } from '../notation/tokenise.ts'
import { readNumber, type WrittenNumber } from './read-number.ts'

type Part = 'degrees' | 'minutes' | 'seconds'

const WORDS = new Map<string, Part>([
  ['deg', 'degrees'],
  ['degs', 'degrees'],
  ['degree', 'degrees'],
  ['degrees', 'degrees'],
  ['min', 'minutes'],
  ['mins', 'minutes'],
  ['minute', 'minutes'],
  ['minutes', 'minutes'],
  ['sec', 'seconds'],
  ['secs', 'seconds'],
  ['second', 'seconds'],
  ['seconds', 'seconds'],
])

const PER_DEGREE: Record<Part, bigint> = { degrees: 1n, minutes: 60n, seconds: 3600n }

function partOf(token: Token): Part | undefined {
  if (token.kind === 'degree') return 'degrees'
  if (token.kind === 'foot') return 'minutes'
  if (token.kind === 'inch') return 'seconds'
  return token.kind === 'word' ? WORDS.get(token.text) : undefined
}

const IN_NUMBER: ReadonlySet<string> = new Set(['number', 'vulgar', 'slash', 'dash', 'newline', 'bar'])

/** The sign after the number that stands at the place. */
function markAhead(reader: TokenReader, from: number): Token {
  let ahead = from
  while (IN_NUMBER.has(reader.peek(ahead).kind)) ahead += 1
  return reader.peek(ahead)
}

/** Whether what follows is an angle in degrees: feet and inches share their marks with minutes and seconds. */
export function angleFollows(reader: TokenReader): boolean {
  return markAhead(reader, 0).at > reader.peek().at && partOf(markAhead(reader, 0)) === 'degrees'
}

/** Whether a number with this mark comes next, after a dash perhaps. */
function partFollows(reader: TokenReader, part: Part): boolean {
  const skip = reader.peek().kind === 'dash' ? 1 : 0
  const start = reader.peek(skip).kind
  return (start === 'number' || start === 'vulgar') && partOf(markAhead(reader, skip)) === part
}

function value(number: WrittenNumber, part: Part): Angle {
  return {
    degrees: new Fraction(number.n, number.d * PER_DEGREE[part]),
    graduation: new Fraction(1n, number.parts * PER_DEGREE[part]),
  }
}

function readPart(reader: TokenReader, part: Part): { number: WrittenNumber; angle: Angle } {
  reader.accept('dash')
  const number = readNumber(reader, reason('notation.angle-expected'))
  if (partOf(reader.peek()) !== part) {
    throw reader.error(reason('notation.angle-part-unmarked', { part }))
  }
  if (number.n >= 60n * number.d) {
    throw reader.error(reason('notation.sixty-of-a-part', { part }), number.first)
  }
  reader.take()
  return { number, angle: value(number, part) }
}

/**
 * Reads one angle without sign: degrees, minutes and seconds, of which the last may hold a fraction or decimals.
 *
 * @throws NotationError
 */
export function readAngle(reader: TokenReader): Angle {
  const number = readNumber(reader, reason('notation.angle-expected'))
  const first = partOf(reader.peek())
  if (first === undefined) throw reader.error(reason('notation.angle-unit-missing'))
  reader.take()
  let last = { number, angle: value(number, first) }
  let { degrees } = last.angle
  for (const part of ['minutes', 'seconds'] as const) {
    if (PER_DEGREE[part] <= PER_DEGREE[first] || !partFollows(reader, part)) continue
    if (last.number.form !== 'whole') {
      throw reader.error(reason('notation.angle-fraction-inside'), last.number.first)
    }
    last = readPart(reader, part)
    degrees = degrees.add(last.angle.degrees)
  }
  return { degrees, graduation: last.angle.graduation }
}

/** What to say of a sign that cannot follow an angle. */
export function afterAngle(reader: TokenReader): NotationReason {
  const { kind } = reader.peek()
  return kind === 'number' || kind === 'vulgar'
    ? reason('notation.angle-part-stray')
    : reason('notation.after-angle')
}
