/** Estimates of probability: the less probable interval, the next state after either, and whether the sense changes. Source: ITU-T T.88, table E.1. */
const STATES: readonly (readonly [
  interval: number,
  moreProbable: number,
  lessProbable: number,
  turns: number,
])[] = [
  [0x5601, 1, 1, 1],
  [0x3401, 2, 6, 0],
  [0x1801, 3, 9, 0],
  [0x0ac1, 4, 12, 0],
  [0x0521, 5, 29, 0],
  [0x0221, 38, 33, 0],
  [0x5601, 7, 6, 1],
  [0x5401, 8, 14, 0],
  [0x4801, 9, 14, 0],
  [0x3801, 10, 14, 0],
  [0x3001, 11, 17, 0],
  [0x2401, 12, 18, 0],
  [0x1c01, 13, 20, 0],
  [0x1601, 29, 21, 0],
  [0x5601, 15, 14, 1],
  [0x5401, 16, 14, 0],
  [0x5101, 17, 15, 0],
  [0x4801, 18, 16, 0],
  [0x3801, 19, 17, 0],
  [0x3401, 20, 18, 0],
  [0x3001, 21, 19, 0],
  [0x2801, 22, 19, 0],
  [0x2401, 23, 20, 0],
  [0x2201, 24, 21, 0],
  [0x1c01, 25, 22, 0],
  [0x1801, 26, 23, 0],
  [0x1601, 27, 24, 0],
  [0x1401, 28, 25, 0],
  [0x1201, 29, 26, 0],
  [0x1101, 30, 27, 0],
  [0x0ac1, 31, 28, 0],
  [0x09c1, 32, 29, 0],
  [0x08a1, 33, 30, 0],
  [0x0521, 34, 31, 0],
  [0x0441, 35, 32, 0],
  [0x02a1, 36, 33, 0],
  [0x0221, 37, 34, 0],
  [0x0141, 38, 35, 0],
  [0x0111, 39, 36, 0],
  [0x0085, 40, 37, 0],
  [0x0049, 41, 38, 0],
  [0x0025, 42, 39, 0],
  [0x0015, 43, 40, 0],
  [0x0009, 44, 41, 0],
  [0x0005, 45, 42, 0],
  [0x0001, 45, 43, 0],
  [0x5601, 46, 46, 0],
]

interface Context {
  state: number
  moreProbable: number
}

/** Codes decisions, each in a context, by the adaptive binary arithmetic coder. Source: ITU-T T.88, annex E. */
export class ArithmeticCoder {
  readonly #contexts = new Map<number, Context>()
  /** The first byte is there to take a carry that never comes. */
  readonly #bytes: number[] = [0]
  #code = 0
  #interval = 0x8000
  #shifts = 12

  decide(context: number, decision: number): void {
    const known = this.#contexts.get(context) ?? { state: 0, moreProbable: 0 }
    this.#contexts.set(context, known)
    const [interval, moreProbable, lessProbable, turns] = STATES[known.state] ?? [0x5601, 46, 46, 0]
    this.#interval -= interval
    if (decision === known.moreProbable) {
      if (this.#interval >= 0x8000) {
        this.#code += interval
        return
      }
      if (this.#interval < interval) this.#interval = interval
      else this.#code += interval
      known.state = moreProbable
    } else {
      if (this.#interval < interval) this.#code += interval
      else this.#interval = interval
      if (turns === 1) known.moreProbable = 1 - known.moreProbable
      known.state = lessProbable
    }
    do {
      this.#interval *= 2
      this.#code *= 2
      this.#shifts -= 1
      if (this.#shifts === 0) this.#byteOut()
    } while (this.#interval < 0x8000)
  }

  /** Ends the code, with the marker that follows it. */
  bytes(): Buffer {
    const upper = this.#code + this.#interval
    this.#code = Math.floor(this.#code / 0x10000) * 0x10000 + 0xffff
    if (this.#code >= upper) this.#code -= 0x8000
    for (let i = 0; i < 2; i++) {
      this.#code *= 2 ** this.#shifts
      this.#byteOut()
    }
    const out = this.#bytes.slice(1)
    if (out.at(-1) === 0xff) out.pop()
    return Buffer.from([...out, 0xff, 0xac])
  }

  #byteOut(): void {
    const last = this.#bytes.length - 1
    if (this.#bytes[last] !== 0xff && this.#code >= 0x8000000) {
      this.#bytes[last] = (this.#bytes[last] ?? 0) + 1
      this.#code -= 0x8000000
    }
    // After a byte of ones a bit is stuffed.
    const width = this.#bytes[last] === 0xff ? 20 : 19
    const unit = 2 ** width
    this.#bytes.push(Math.floor(this.#code / unit))
    this.#code %= unit
    this.#shifts = width === 20 ? 7 : 8
  }
}
