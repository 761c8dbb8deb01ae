/** One glyph as it was seen in a field. */
export interface SeenGlyph {
  /** Pixels of the field. */
  readonly centre: readonly [number, number]
  readonly width: number
  readonly height: number
  /** Probability that a glyph stands here at all. */
  readonly present: number
  /** What it could be if one does, most probable first. */
  readonly alternatives: readonly { readonly text: string; readonly probability: number }[]
  /** What it was judged by; one hand's glyphs are alike in it. Left out where it was not seen by the network. */
  readonly traits?: Float32Array
  /**
   * Log-likelihood of each glyph by its channel, but for a constant, before anything was known of the hand. Left out with
   * the traits.
   */
  readonly logs?: Float32Array
}
