import type { HistoryHandle } from './history-handle.ts'
import { readLine } from './line-text.ts'
import { segmentsFrom } from './segments.ts'

/** What is still known of a history. */
export interface HeldHistory {
  /** Lines that join up to the last acknowledged one, the oldest first, without their newlines. */
  lines: Buffer[]
  /** Whether the first of them is the one that the history begins with. */
  whole: boolean
}

export const NOTHING_HELD: HeldHistory = { lines: [], whole: false }

interface Held {
  bytes: Buffer
  /** null: the history begins with it. */
  previous: string | null
}

/** Whole, sound lines wherever they were found, by their hashes: which belong together is told by what they go on from. */
export class HeldLines {
  readonly #lines = new Map<string, Held>()

  /** Takes every line of a file that is whole; what is none is passed over. */
  async takeFile(handle: Pick<HistoryHandle, 'read'>): Promise<void> {
    for await (const segments of segmentsFrom(handle, 0))
      for (const { bytes, ended } of segments) if (ended) this.#take(bytes)
  }

  takeText(text: string): void {
    for (const line of text.split('\n')) this.#take(Buffer.from(line))
  }

  #take(bytes: Buffer): void {
    const read = readLine(bytes)
    if (read === undefined || this.#lines.has(read.hash)) return
    const { line, hash } = read
    this.#lines.set(hash, { bytes, previous: line.previous })
  }

  /** The longest chain of lines that ends with the one of a hash. */
  upTo(hash: string): HeldHistory {
    const lines: Buffer[] = []
    for (let at: string | null = hash; at !== null; ) {
      const held = this.#lines.get(at)
      if (held === undefined) return { lines: lines.reverse(), whole: false }
      lines.push(held.bytes)
      at = held.previous
    }
    return { lines: lines.reverse(), whole: true }
  }
}
