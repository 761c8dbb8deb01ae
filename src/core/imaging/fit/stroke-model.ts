import { type EdgeResponse, edgeReading, readEdge } from './edge-response.ts'

/** What is known of a stroke while it is fitted. */
export interface Guess {
  /** Across the curve in the middle of the piece, pixels, and per pixel along. */
  offset: number
  turn: number
  width: number
  blur: number
}

/**
 * The stroke at one pixel, of contrast 1, and its derivatives.
 * Model: value = g0 + g1·along + g2·across + C·p(across − offset − turn·along), p a box as wide as the stroke seen
 * through the response of an edge.
 */
export class StrokeModel {
  /** p. */
  stroke = Number.NaN
  /** Its derivative to the offset; to the turn it is this times along. */
  place = Number.NaN
  /** To the logarithms of width and blur. */
  width = Number.NaN
  blur = Number.NaN
  readonly #left = edgeReading()
  readonly #right = edgeReading()

  /** @param u across from the middle of the stroke, pixels */
  read(edge: EdgeResponse, u: number, guess: Guess): void {
    const half = guess.width / 2
    const left = this.#left
    const right = this.#right
    readEdge(edge, u + half, left)
    readEdge(edge, u - half, right)
    this.stroke = left.step - right.step
    this.place = right.spread - left.spread
    this.width = half * (left.spread + right.spread)
    this.blur = guess.blur * guess.blur * (left.slope - right.slope)
  }
}
