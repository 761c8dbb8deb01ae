/** Directions that are tried, degrees apart. */
const STEP = 1.5
const DIRECTIONS = Math.round(180 / STEP)
/** Lines side by side are this far apart, pixels. */
const APART = 2

/** A straight line without ends: all places with x·cos + y·sin = away. */
export interface Straight {
  readonly cos: number
  readonly sin: number
  readonly away: number
}

/**
 * How many of some places lie on each straight line: every place votes for all that pass through it.
 * Source: R. O. Duda and P. E. Hart, Use of the Hough transformation to detect lines and curves in pictures,
 * Communications of the ACM 15 (1972) 11–15.
 */
export class LineVotes {
  readonly #cos = Float64Array.from({ length: DIRECTIONS }, (_, i) => Math.cos((i * STEP * Math.PI) / 180))
  readonly #sin = Float64Array.from({ length: DIRECTIONS }, (_, i) => Math.sin((i * STEP * Math.PI) / 180))
  readonly #across: number
  readonly #offset: number
  readonly #votes: Float32Array

  constructor(width: number, height: number) {
    this.#offset = Math.ceil(Math.hypot(width, height)) + APART
    this.#across = Math.ceil((2 * this.#offset) / APART) + 1
    this.#votes = new Float32Array(DIRECTIONS * this.#across)
  }

  /** Counts a place, or with −1 takes its votes back. */
  add(x: number, y: number, weight: number): void {
    for (let i = 0; i < DIRECTIONS; i++) {
      const away = x * (this.#cos[i] ?? 0) + y * (this.#sin[i] ?? 0)
      const at = i * this.#across + Math.round((away + this.#offset) / APART)
      this.#votes[at] = (this.#votes[at] ?? 0) + weight
    }
  }

  /** The line with the most votes, with their number. */
  best(): { readonly line: Straight; readonly votes: number } {
    let best = 0
    for (let at = 1; at < this.#votes.length; at++)
      if ((this.#votes[at] ?? 0) > (this.#votes[best] ?? 0)) best = at
    const i = Math.floor(best / this.#across)
    const away = (best % this.#across) * APART - this.#offset
    return { line: { cos: this.#cos[i] ?? 1, sin: this.#sin[i] ?? 0, away }, votes: this.#votes[best] ?? 0 }
  }

  /** Leaves a line and its nearest neighbours out of what is best from now on. */
  strike({ cos, sin, away }: Straight): void {
    const i = Math.round((Math.atan2(sin, cos) * 180) / Math.PI / STEP)
    const middle = Math.round((away + this.#offset) / APART)
    for (let di = -1; di <= 1; di++)
      for (let d = -1; d <= 1; d++) {
        const [row, at] = [i + di, middle + d]
        if (row >= 0 && row < DIRECTIONS && at >= 0 && at < this.#across)
          this.#votes[row * this.#across + at] = 0
      }
  }
}
