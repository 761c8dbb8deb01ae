import type { ProposedStack } from './item.ts'
import type { PlacedGlyph } from './placed-glyph.ts'
import { stacksByBars } from './stacks-by-bars.ts'
import { stacksWithoutBars } from './stacks-without-bars.ts'

/** Stacks that no two share a glyph of, the likeliest taken first. @param high height of a full digit */
export function proposeStacks(glyphs: readonly PlacedGlyph[], high: number): ProposedStack[] {
  const taken = new Set<PlacedGlyph>()
  const chosen: ProposedStack[] = []
  const take = (proposed: readonly ProposedStack[]): void => {
    for (const one of [...proposed].sort((a, b) => b.probability - a.probability)) {
      if (one.glyphs.some((glyph) => taken.has(glyph))) continue
      for (const glyph of one.glyphs) taken.add(glyph)
      chosen.push(one)
    }
  }
  take(stacksByBars(glyphs, high))
  take(
    stacksWithoutBars(
      glyphs.filter((glyph) => !taken.has(glyph)),
      glyphs,
      chosen,
      high,
    ),
  )
  return chosen
}
