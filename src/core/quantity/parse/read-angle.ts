import Fraction from 'fraction.js'
import type { Angle } from '../angle.ts'
import type { NotationReader } from '../notation/token-reader.ts'
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

const EXPECTED = "Expected an angle such as 47° 30', 47.5° or 47 1/2 deg."

function partOf(token: Token): Part | undefined {
  if (token.kind === 'degree') return 'degrees'
  if (token.kind === 'foot') return 'minutes'
  if (token.kind === 'inch') return 'seconds'
  return token.kind === 'word' ? WORDS.get(token.text) : undefined
}

const IN_NUMBER: ReadonlySet<string> = new Set(['number', 'vulgar', 'slash', 'dash', 'newline', 'bar'])

/** The sign after the number that stands at the place. */
function markAhead(reader: NotationReader, from: number): Token {
  let ahead = from
  while (IN_NUMBER.has(reader.peek(ahead).kind)) ahead += 1
  return reader.peek(ahead)
}

/** Whether what follows is an angle in degrees: feet and inches share their marks with minutes and seconds. */
export function angleFollows(reader: NotationReader): boolean {
  return markAhead(reader, 0).at > reader.peek().at && partOf(markAhead(reader, 0)) === 'degrees'
}

/** Whether a number with this mark comes next, after a dash perhaps. */
function partFollows(reader: NotationReader, part: Part): boolean {
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

function readPart(reader: NotationReader, part: Part): { number: WrittenNumber; angle: Angle } {
  reader.accept('dash')
  const number = readNumber(reader, EXPECTED)
  if (partOf(reader.peek()) !== part) throw reader.error(`Expected the mark of ${part} after the number.`)
  if (number.n >= 60n * number.d) {
    throw reader.error(
      `There are fewer than 60 ${part} here or they would be carried over; write them so.`,
      number.first,
    )
  }
  reader.take()
  return { number, angle: value(number, part) }
}

/**
 * Reads one angle without sign: degrees, minutes and seconds, of which the last may hold a fraction or decimals.
 *
 * @throws NotationError
 */
export function readAngle(reader: NotationReader): Angle {
  const number = readNumber(reader, EXPECTED)
  const first = partOf(reader.peek())
  if (first === undefined)
    throw reader.error('The unit of the angle is missing; write ° or deg after the number.')
  reader.take()
  let last = { number, angle: value(number, first) }
  let { degrees } = last.angle
  for (const part of ['minutes', 'seconds'] as const) {
    if (PER_DEGREE[part] <= PER_DEGREE[first] || !partFollows(reader, part)) continue
    if (last.number.form !== 'whole') {
      throw reader.error(
        `Only the last part of an angle may hold a fraction; write whole numbers before it.`,
        last.number.first,
      )
    }
    last = readPart(reader, part)
    degrees = degrees.add(last.angle.degrees)
  }
  return { degrees, graduation: last.angle.graduation }
}

/** What to say of a sign that cannot follow an angle. */
export function afterAngle(reader: NotationReader): string {
  const { kind } = reader.peek()
  return kind === 'number' || kind === 'vulgar'
    ? 'Minutes need their mark \' and seconds their mark ", in that order, as in 47° 30\' 15"; write them so.'
    : 'Nothing may follow the angle; take this away.'
}
