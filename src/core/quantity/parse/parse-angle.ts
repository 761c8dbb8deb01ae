import { reason } from '../../words/core-words.ts'
import type { Angle } from '../angle.ts'
import { TokenReader } from '../notation/token-reader.ts'
import { afterAngle, readAngle } from './read-angle.ts'

/** What is to be known to read an angle. */
export interface AngleContext {
  /** Whether the angle can be less than 0; a printed one can't. */
  readonly signed?: boolean
}

/**
 * Reads an angle exactly: `47° 30'`, `47°30'15"`, `47.5°`, `47 1/2°`, `47 deg 30 min`.
 *
 * @throws NotationError with the place where reading stopped, for anything that has no single meaning
 */
export function parseAngle(text: string, context: AngleContext = {}): Angle {
  const reader = new TokenReader(text)
  const minus = reader.peek().kind === 'dash'
  if (minus) {
    if (!context.signed) throw reader.error(reason('notation.angle-negative'))
    reader.take()
  }
  const angle = readAngle(reader)
  if (!reader.atEnd()) throw reader.error(afterAngle(reader))
  return minus ? { ...angle, degrees: angle.degrees.neg() } : angle
}
