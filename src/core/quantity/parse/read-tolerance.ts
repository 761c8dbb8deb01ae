import type { Tolerance } from '../figure.ts'
import type { NotationReader } from '../notation/token-reader.ts'

/** Two limits one under the other are read as two lines. */
function skipLineEnd(reader: NotationReader): void {
  const { kind } = reader.peek(1)
  if (reader.peek().kind === 'newline' && (kind === 'plus' || kind === 'dash' || kind === 'plus-minus'))
    reader.take()
}

/** Whether what follows starts a tolerance. */
export function toleranceFollows(reader: NotationReader): boolean {
  skipLineEnd(reader)
  const { kind } = reader.peek()
  return kind === 'plus-minus' || kind === 'plus' || kind === 'dash'
}

/**
 * Reads a tolerance that shows its signs: `±1/32`, `+0 −1/64`, `−0 +1/32`.
 *
 * @param readSize reads one limit without its sign
 * @throws NotationError
 */
export function readTolerance<T>(
  reader: NotationReader,
  readSize: (reader: NotationReader) => T,
): Tolerance<T> {
  const sign = reader.take()
  const first = readSize(reader)
  if (sign.kind === 'plus-minus') return { plus: first, minus: first }
  skipLineEnd(reader)
  const other = reader.peek()
  const wanted = sign.kind === 'plus' ? 'dash' : 'plus'
  if (other.kind !== wanted) {
    throw reader.error(
      `A tolerance has both limits; write ${sign.kind === 'plus' ? '−0' : '+0'} for none on the other side.`,
    )
  }
  reader.take()
  const second = readSize(reader)
  return sign.kind === 'plus' ? { plus: first, minus: second } : { plus: second, minus: first }
}
