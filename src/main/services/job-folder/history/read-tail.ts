import type { HistoryHandle } from './history-handle.ts'
import { isBegin, type KeptLine, type Tip } from './kept-line.ts'
import { readLine } from './line-text.ts'
import { type Segment, segmentsFrom } from './segments.ts'

/** A line and where it stands. */
export interface PlacedLine {
  line: KeptLine
  tip: Tip
}

/** What follows the last whole line and is none. */
export interface Torn {
  /** The byte that it begins at. */
  at: number
  bytes: number
  /** Its first bytes, as they can be shown. */
  begins: string
  /** No write of this program leaves that behind, wherever it is cut short: another wrote it, or changed it. */
  alien: boolean
}

export interface Tail {
  /** Where the chain is whole up to. */
  tip: Tip
  /** What was cut short while it was written, and never acknowledged. */
  torn?: Torn
  /** The chain goes no further although lines follow that are whole: some of what was acknowledged is gone or not ours. */
  broken?: Torn
}

const SHOWN = 60

const shown = (bytes: Buffer): string =>
  bytes
    .subarray(0, SHOWN)
    .toString('latin1')
    .replace(/[^\x20-\x7e]/g, '?')

/** What every line of this program begins with. */
const OPENS = '{"n":'

/**
 * Whether a stretch that is no whole line was written or changed by another. A line that was cut short begins as all
 * do; where blocks of it did not come to the disk there are zeros, which stand in no JSON.
 */
function isAlien({ bytes, ended }: Segment): boolean {
  if (bytes.includes(0)) return false
  const head = bytes.subarray(0, OPENS.length).toString('latin1')
  if (!OPENS.startsWith(head) || (ended && head.length < OPENS.length)) return true
  if (!ended) return false
  try {
    JSON.parse(bytes.toString('utf8'))
    return true
  } catch {
    return false
  }
}

const tipOf = (line: KeptLine, hash: string, { at, bytes }: Segment): Tip => ({
  n: line.n,
  hash,
  at,
  end: at + bytes.length + 1,
})

/** Whether a line goes on from the one before it; at the top of the file only a beginning does. */
function follows(line: KeptLine, before: Tip | null): boolean {
  if (before === null) return isBegin(line) && line.previous === null
  // A history that is begun anew may have numbers left out: edits that are gone had them.
  const next = isBegin(line) ? line.n > before.n : line.n === before.n + 1
  return line.previous === before.hash && next
}

/**
 * Reads the lines that follow one, and gives each to `each` as it comes.
 *
 * A last line that is not whole, or several that were on their way to the disk together, were never acknowledged. A
 * line that is whole and does not go on from the one before it was: something was taken out, or put there by another.
 * @param before the line that they follow; null: from the top of the file
 */
export async function readTail(
  handle: Pick<HistoryHandle, 'read'>,
  before: Tip | null,
  each: (placed: PlacedLine) => void,
): Promise<Tail> {
  let tip = before
  let rest: Torn | undefined
  let broken = false
  for await (const segments of segmentsFrom(handle, before?.end ?? 0)) {
    for (const segment of segments) {
      const read = segment.ended ? readLine(segment.bytes) : undefined
      if (rest === undefined && read !== undefined && follows(read.line, tip)) {
        tip = tipOf(read.line, read.hash, segment)
        each({ line: read.line, tip })
        continue
      }
      const size = segment.bytes.length + (segment.ended ? 1 : 0)
      // Whole lines that were written together with the torn one before them were not acknowledged either.
      const unacknowledged =
        rest !== undefined &&
        read !== undefined &&
        !isBegin(read.line) &&
        (read.line.together ?? read.line.n) <= (tip?.n ?? 0) + 1
      if (read !== undefined && !unacknowledged) broken = true
      rest ??= { at: segment.at, bytes: 0, begins: shown(segment.bytes), alien: isAlien(segment) }
      rest.bytes += size
    }
  }
  const last = tip ?? NOTHING
  if (rest === undefined) return { tip: last }
  return broken ? { tip: last, broken: rest } : { tip: last, torn: rest }
}

/** Before the first line. */
export const NOTHING: Tip = { n: -1, hash: '', at: 0, end: 0 }
