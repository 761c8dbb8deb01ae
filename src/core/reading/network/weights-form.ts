/** The network as `training/reading` writes it down. */
export interface NetworkWeights {
  /** Glyphs by their channel. */
  readonly glyphs: readonly string[]
  readonly stem: number
  readonly trunk: number
  /** Of the two layers of each block: how far its rows and its columns lie apart. */
  readonly dilations: readonly (readonly [readonly [number, number], readonly [number, number]])[]
  /** What the log-odds that a glyph is there are multiplied by, then added, so that they are right in the long run. */
  readonly present: readonly [number, number]
  /** What the log-likelihoods of the glyphs are divided by, so that they are right in the long run. */
  readonly temperature: number
  /** All layers in order, each its weights (rows × columns × channels in × channels out), then its biases: binary16, base64. */
  readonly numbers: string
}
