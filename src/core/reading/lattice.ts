/** What the strokes in one place could be. '' = nothing is here. What the probabilities leave to 1 is a glyph without a name. */
export interface LatticeSlot {
  readonly alternatives: readonly { readonly text: string; readonly probability: number }[]
  /** Where it stands, [x, y, width, height] in pixels of the page or crop, when it was seen. */
  readonly box?: readonly [number, number, number, number]
}

/** Glyphs of one figure in reading order, linearised: a stacked fraction is numerator slots, a slot '/', denominator slots; between a whole number and its fraction a slot ' '. */
export interface Lattice {
  readonly slots: readonly LatticeSlot[]
}
