/** Bits one after another into bytes, the most significant first. */
export class BitWriter {
  readonly #bytes: number[] = []
  #held = 0
  #count = 0

  /** Writes the low `length` bits of a number. */
  number(value: number, length: number): void {
    for (let bit = length - 1; bit >= 0; bit--) this.#bit((value >> bit) & 1)
  }

  /** Writes a code given as a text of 0 and 1. */
  code(text: string): void {
    for (const bit of text) this.#bit(bit === '1' ? 1 : 0)
  }

  /** Bits written so far. */
  get length(): number {
    return this.#bytes.length * 8 + this.#count
  }

  /** Fills the last byte with zeros. */
  align(): void {
    while (this.#count > 0) this.#bit(0)
  }

  bytes(): Buffer {
    this.align()
    return Buffer.from(this.#bytes)
  }

  #bit(bit: number): void {
    this.#held = (this.#held << 1) | bit
    this.#count += 1
    if (this.#count < 8) return
    this.#bytes.push(this.#held)
    this.#held = 0
    this.#count = 0
  }
}
