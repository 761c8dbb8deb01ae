import { reason } from '../../words/core-words.ts'
import type { Tolerance } from '../figure.ts'
import type { TokenReader } from '../notation/token-reader.ts'
import type { TokenKind } from '../notation/tokenise.ts'

/** Two limits one under the other are read as two lines; a stroke may stand between them on one. */
function skipBetween(reader: TokenReader, between: readonly TokenKind[]): void {
  const { kind } = reader.peek(1)
  if (between.includes(reader.peek().kind) && (kind === 'plus' || kind === 'dash' || kind === 'plus-minus'))
    reader.take()
}

/** Whether what follows starts a tolerance. */
export function toleranceFollows(reader: TokenReader): boolean {
  skipBetween(reader, ['newline'])
  const { kind } = reader.peek()
  return kind === 'plus-minus' || kind === 'plus' || kind === 'dash'
}

/**
 * Reads a tolerance that shows its signs: `±1/32`, `+0 −1/64`, `−0 +1/32`.
 *
 * @param readSize reads one limit without its sign
 * @throws NotationError
 */
export function readTolerance<T>(reader: TokenReader, readSize: (reader: TokenReader) => T): Tolerance<T> {
  const sign = reader.take()
  const first = readSize(reader)
  if (sign.kind === 'plus-minus') return { plus: first, minus: first }
  skipBetween(reader, ['newline', 'slash'])
  const other = reader.peek()
  const wanted = sign.kind === 'plus' ? 'dash' : 'plus'
  if (other.kind !== wanted) {
    throw reader.error(
      reason(sign.kind === 'plus' ? 'notation.minus-limit-missing' : 'notation.plus-limit-missing'),
    )
  }
  reader.take()
  const second = readSize(reader)
  return sign.kind === 'plus' ? { plus: first, minus: second } : { plus: second, minus: first }
}
