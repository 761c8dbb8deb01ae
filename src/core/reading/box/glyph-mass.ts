import type { SeenGlyph } from '../glyphs/seen-glyph.ts'

/** How much is seen, and how surely: what is as likely nothing as something, or anything, counts for nothing. */
export function massOf(glyphs: readonly SeenGlyph[]): number {
  return glyphs.reduce((sum, { present, alternatives }) => {
    const sure = present * (alternatives[0]?.probability ?? 0)
    return sum + Math.max(0, sure - 0.3)
  }, 0)
}
