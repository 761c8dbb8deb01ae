/** A stretch of a straight, thin line in a field of ink. */
export interface LongLine {
  /** Ends, pixels of the field; whole numbers are middles of pixels. */
  readonly from: readonly [number, number]
  readonly to: readonly [number, number]
  /** Pixels across, where nothing touches it. */
  readonly width: number
}

/** What counts as a long line. */
export interface LineLimits {
  /** Least length, pixels: longer than any stroke of a glyph and any bar of a fraction. */
  readonly least: number
  /** Least length of one that runs out of the field; `least` unless given. */
  readonly leastAtEdge?: number
  /** Most pixels across. */
  readonly thickest: number
}

/** Length of a line, pixels. */
export const lengthOf = ({ from, to }: Pick<LongLine, 'from' | 'to'>): number =>
  Math.hypot(to[0] - from[0], to[1] - from[1])
