import type { SeenGlyph } from '../glyphs/seen-glyph.ts'
import { surenessOf } from '../glyphs/sureness.ts'

/** How much is seen, and how surely: what is as likely nothing as something, or anything, counts for nothing. */
export const massOf = (glyphs: readonly SeenGlyph[]): number =>
  glyphs.reduce((sum, glyph) => sum + Math.max(0, surenessOf(glyph) - 0.3), 0)
