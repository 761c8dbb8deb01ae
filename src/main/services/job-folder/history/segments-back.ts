import type { HistoryHandle } from './history-handle.ts'
import type { Segment } from './segments.ts'

const NEWLINE = 0x0a
const CHUNK = 1 << 20

async function readWhole(handle: Pick<HistoryHandle, 'read'>, at: number, size: number): Promise<Buffer> {
  const bytes = Buffer.allocUnsafe(size)
  for (let done = 0; done < size; ) {
    const { bytesRead } = await handle.read(bytes, done, size - done, at + done)
    // Somebody cut the file meanwhile: what is missing is no line.
    if (bytesRead === 0) return bytes.fill(0, done)
    done += bytesRead
  }
  return bytes
}

/**
 * The stretches of a file between its newlines from a byte back to its beginning, the last first, in lists of what was
 * read in one go, so that no file is held whole.
 */
export async function* segmentsBack(
  handle: Pick<HistoryHandle, 'read'>,
  end: number,
): AsyncGenerator<Segment[]> {
  /** What was read of the stretch that goes on before it. */
  let parts: Buffer[] = []
  let ended = false
  for (let position = end; position > 0; ) {
    const size = Math.min(CHUNK, position)
    position -= size
    const chunk = await readWhole(handle, position, size)
    const found: Segment[] = []
    let to = size
    for (let newline = chunk.lastIndexOf(NEWLINE); newline !== -1; ) {
      const piece = chunk.subarray(newline + 1, to)
      const bytes = parts.length === 0 ? piece : Buffer.concat([piece, ...parts])
      if (ended || bytes.length > 0) found.push({ bytes, at: position + newline + 1, ended })
      parts = []
      ended = true
      to = newline
      newline = to === 0 ? -1 : chunk.lastIndexOf(NEWLINE, to - 1)
    }
    parts.unshift(chunk.subarray(0, to))
    if (found.length > 0) yield found
  }
  const bytes = Buffer.concat(parts)
  if (ended || bytes.length > 0) yield [{ bytes, at: 0, ended }]
}
