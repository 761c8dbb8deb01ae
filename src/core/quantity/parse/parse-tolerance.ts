import type { Angle } from '../angle.ts'
import type { Tolerance } from '../figure.ts'
import type { Length } from '../length.ts'
import { TokenReader } from '../notation/token-reader.ts'
import { soundTolerance } from './figure-draft.ts'
import type { LengthContext } from './parse-length.ts'
import { afterAngle, readAngle } from './read-angle.ts'
import { afterLength, readLength, type WrittenLength } from './read-length.ts'
import { readTolerance, toleranceFollows } from './read-tolerance.ts'

/**
 * Reads a tolerance on a length: `±1/32`, `+0 −1/64`, `+.005 −.002`, or a bare `1/32`, which means ±.
 *
 * @param context what a bare number means
 * @throws NotationError, also for nothing on either side: no shop keeps to that
 */
export function parseTolerance(text: string, context: Pick<LengthContext, 'unit'> = {}): Tolerance<Length> {
  const reader = new TokenReader(text)
  const bare = context.unit ?? 'in'
  const first = reader.peek()
  let last: WrittenLength | undefined
  const readSize = (joins: boolean): Length => {
    last = readLength(reader, bare, joins)
    return last.length
  }
  if (!toleranceFollows(reader)) {
    const both = readSize(true)
    if (!reader.atEnd() && last) throw reader.error(afterLength(reader, last))
    return soundTolerance(reader, { plus: both, minus: both }, first)
  }
  const tolerance = readTolerance(reader, () => readSize(false))
  if (!reader.atEnd() && last) throw reader.error(afterLength(reader, last))
  return soundTolerance(reader, tolerance, first)
}

/**
 * Reads a tolerance on an angle: `±1°`, `±30'`, `+0° −1°`, or a bare `1°`, which means ±.
 *
 * @throws NotationError
 */
export function parseAngleTolerance(text: string): Tolerance<Angle> {
  const reader = new TokenReader(text)
  const first = reader.peek()
  let tolerance: Tolerance<Angle>
  if (toleranceFollows(reader)) {
    tolerance = readTolerance(reader, readAngle)
  } else {
    const both = readAngle(reader)
    tolerance = { plus: both, minus: both }
  }
  if (!reader.atEnd()) throw reader.error(afterAngle(reader))
  return soundTolerance(reader, tolerance, first)
}
