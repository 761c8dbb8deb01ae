import type { SeenGlyph } from './seen-glyph.ts'

/** A rectangle whose sides are level, by its edges. */
export interface Edges {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** Edges round all of these; of none, nothing. */
export const edgesRound = (all: readonly Edges[]): Edges => ({
  left: Math.min(...all.map(({ left }) => left)),
  top: Math.min(...all.map(({ top }) => top)),
  right: Math.max(...all.map(({ right }) => right)),
  bottom: Math.max(...all.map(({ bottom }) => bottom)),
})

/** Edges of a glyph, as level as it was seen. */
export const glyphEdges = ({ centre: [x, y], width, height }: SeenGlyph): Edges => ({
  left: x - width / 2,
  top: y - height / 2,
  right: x + width / 2,
  bottom: y + height / 2,
})
