import type { HistoryHandle } from './history-handle.ts'
import type { KeptLine, Tip } from './kept-line.ts'
import { readLine } from './line-text.ts'
import { segmentsFrom } from './segments.ts'

/** A line that was looked for, and where it is. */
export interface FoundLine {
  line: KeptLine
  tip: Tip
}

const FIRST_LOOK = 4096

/** The line that begins at a byte; undefined where no whole line does. */
export async function lineAt(
  handle: Pick<HistoryHandle, 'read'>,
  at: number,
): Promise<FoundLine | undefined> {
  for (let size = FIRST_LOOK; ; size *= 8) {
    const bytes = Buffer.allocUnsafe(size)
    const { bytesRead } = await handle.read(bytes, 0, size, at)
    const newline = bytes.subarray(0, bytesRead).indexOf(0x0a)
    if (newline >= 0) {
      const read = readLine(bytes.subarray(0, newline))
      return read && { line: read.line, tip: { n: read.line.n, hash: read.hash, at, end: at + newline + 1 } }
    }
    if (bytesRead < size) return undefined
  }
}

/** The last whole line that is wanted, of all in the file; undefined where there is none. */
export async function findLine(
  handle: Pick<HistoryHandle, 'read'>,
  wanted: (line: KeptLine, hash: string) => boolean,
): Promise<FoundLine | undefined> {
  let found: FoundLine | undefined
  for await (const segments of segmentsFrom(handle, 0)) {
    for (const { bytes, at, ended } of segments) {
      const read = ended ? readLine(bytes) : undefined
      if (read === undefined || !wanted(read.line, read.hash)) continue
      found = { line: read.line, tip: { n: read.line.n, hash: read.hash, at, end: at + bytes.length + 1 } }
    }
  }
  return found
}
