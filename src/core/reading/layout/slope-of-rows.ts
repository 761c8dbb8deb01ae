import type { SeenGlyph } from '../glyphs/seen-glyph.ts'
import { isTall } from './placed-glyph.ts'

/** Text is set upright before it is looked at, to within some degrees: tan 8°. */
const STEEPEST = 0.14
/** Glyphs of one row differ in height by less than this share. */
const ALIKE = 0.2
/** Further apart than so many heights they tell nothing of one another. */
const APART = 4

/** How much rows go down to the right, as a share of how far: the middle of what neighbours of one height tell of it. */
export function slopeOfRows(seen: readonly SeenGlyph[]): number {
  const tall = seen.filter(({ alternatives }) => isTall(alternatives[0]?.text ?? ''))
  const told: { slope: number; weight: number }[] = []
  for (const a of tall)
    for (const b of tall) {
      const across = b.centre[0] - a.centre[0]
      const high = Math.max(a.height, b.height)
      if (across < high / 4 || across > APART * high) continue
      if (Math.abs(a.height - b.height) > ALIKE * high) continue
      const slope = (b.centre[1] - a.centre[1]) / across
      if (Math.abs(slope) < STEEPEST) told.push({ slope, weight: (across * a.present * b.present) / high })
    }
  told.sort((a, b) => a.slope - b.slope)
  let left = told.reduce((sum, { weight }) => sum + weight, 0) / 2
  for (const { slope, weight } of told) {
    left -= weight
    if (left <= 0) return slope
  }
  return 0
}
