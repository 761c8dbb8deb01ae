import type { SeenGlyph } from './seen-glyph.ts'

/** Probability that a glyph stands here, and is what it most likely is. */
export const surenessOf = ({ present, alternatives }: SeenGlyph): number =>
  present * (alternatives[0]?.probability ?? 0)
