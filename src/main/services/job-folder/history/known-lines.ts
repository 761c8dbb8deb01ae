/**
 * Bytes of lines that are held at most: thousands of edits, more than a sitting makes, and little beside the job itself.
 * They are of use only where another overwrites the history, so that a program left open for weeks need not hold more.
 */
const MOST = 8 << 20

/**
 * The text of the lines that a session put into a history, as they were acknowledged: whoever overwrites the open file
 * in place leaves nothing else of them. The oldest are let go of first.
 */
export class KnownLines {
  readonly #most: number
  readonly #texts: { text: string; bytes: number }[] = []
  #bytes = 0

  constructor(most = MOST) {
    this.#most = most
  }

  /** Takes whole lines that follow those before. */
  add(text: string): void {
    const bytes = Buffer.byteLength(text)
    this.#texts.push({ text, bytes })
    this.#bytes += bytes
    while (this.#bytes > this.#most) this.#bytes -= this.#texts.shift()?.bytes ?? 0
  }

  /** What is still held, the oldest first. */
  get text(): string {
    return this.#texts.map(({ text }) => text).join('')
  }
}
