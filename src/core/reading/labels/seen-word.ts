/** A word as it was read on a page. */
export interface SeenWord {
  readonly text: string
  /** That it was read right, by whoever read it: 0 to 1. */
  readonly probability: number
  /** Upright, [x, y, width, height] in pixels of the page. */
  readonly box: readonly [number, number, number, number]
}
