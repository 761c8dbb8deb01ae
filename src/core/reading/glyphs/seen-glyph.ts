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
}
