/**
 * What the network says of each cell of a field, cells being CELL_HEIGHT by CELL_WIDTH pixels, row by row: whether a glyph
 * has its centre there (a log-odds), one number for each glyph that it could be (log-likelihoods but for a constant), and
 * where in the cell its centre is, and how large it is.
 */
export interface CellMap {
  readonly rows: number
  readonly columns: number
  readonly channels: number
  readonly numbers: Float32Array
  /** What the last layer works from: so many numbers for every two cells side by side. */
  readonly features: number
  readonly traits: Float32Array
}

export const CELL_HEIGHT = 4
export const CELL_WIDTH = 2
/** Pixels to which sizes are told: they are natural logarithms of multiples of it. */
export const SIZE_UNIT = 16
