import type { HistoryHandle } from './history-handle.ts'

/** A stretch of a file up to a newline, or to its end. */
export interface Segment {
  /** Without the newline. */
  bytes: Buffer
  /** The byte that it begins at. */
  at: number
  /** Whether its newline is there. */
  ended: boolean
}

const NEWLINE = 0x0a
const CHUNK = 1 << 20

/** The stretches of a file from a byte on, in lists of what was read in one go, so that no file is held whole. */
export async function* segmentsFrom(
  handle: Pick<HistoryHandle, 'read'>,
  start: number,
): AsyncGenerator<Segment[]> {
  let parts: Buffer[] = []
  let begins = start
  for (let position = start; ; ) {
    const chunk = Buffer.allocUnsafe(CHUNK)
    const { bytesRead } = await handle.read(chunk, 0, CHUNK, position)
    if (bytesRead === 0) break
    position += bytesRead
    const found: Segment[] = []
    let from = 0
    for (let to = chunk.indexOf(NEWLINE); to !== -1 && to < bytesRead; to = chunk.indexOf(NEWLINE, from)) {
      const piece = chunk.subarray(from, to)
      const bytes = parts.length === 0 ? piece : Buffer.concat([...parts, piece])
      parts = []
      found.push({ bytes, at: begins, ended: true })
      begins += bytes.length + 1
      from = to + 1
    }
    if (from < bytesRead) parts.push(chunk.subarray(from, bytesRead))
    if (found.length > 0) yield found
  }
  const bytes = Buffer.concat(parts)
  if (bytes.length > 0) yield [{ bytes, at: begins, ended: false }]
}
