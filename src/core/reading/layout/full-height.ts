import { isTall, type PlacedGlyph } from './placed-glyph.ts'

/** Height of a digit or letter that is no part of a fraction: of those that are seen, that which most do not exceed. */
export function fullHeight(glyphs: readonly PlacedGlyph[]): number {
  const tall = glyphs.filter(({ name }) => isTall(name))
  const counted = tall.length > 0 ? tall : glyphs
  const sorted = [...counted].sort((a, b) => a.height - b.height)
  const whole = sorted.reduce((sum, { present }) => sum + present, 0)
  let left = 0.75 * whole
  for (const { height, present } of sorted) {
    left -= present
    if (left <= 0) return Math.max(height, 1)
  }
  return Math.max(sorted.at(-1)?.height ?? 1, 1)
}
