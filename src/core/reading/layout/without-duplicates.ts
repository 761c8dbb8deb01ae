import type { SeenGlyph } from '../glyphs/seen-glyph.ts'

/** Glyphs that share so much of the smaller of them are the same strokes seen twice. */
const SAME = 0.5
/** A small mark inside of a large one's box, such as a point below a slash, shares all of itself and is none of it. */
const OF_ANOTHER_SIZE = 0.3

/** Of glyphs that are seen twice the surer one, which then could be what either could be. */
export function withoutDuplicates(seen: readonly SeenGlyph[]): SeenGlyph[] {
  const kept: SeenGlyph[] = []
  for (const glyph of [...seen].sort((a, b) => b.present - a.present)) {
    const at = kept.findIndex((other) => areSame(other, glyph))
    const other = kept[at]
    if (other === undefined) kept.push(glyph)
    else kept[at] = mixed(other, glyph)
  }
  return kept
}

function areSame(a: SeenGlyph, b: SeenGlyph): boolean {
  const across = overlap(a.centre[0], a.width, b.centre[0], b.width)
  const down = overlap(a.centre[1], a.height, b.centre[1], b.height)
  const [areaA, areaB] = [a.width * a.height, b.width * b.height]
  const [small, large] = [Math.min(areaA, areaB), Math.max(areaA, areaB)]
  if (small <= 0 || large <= 0) return a.centre[0] === b.centre[0] && a.centre[1] === b.centre[1]
  return across * down > SAME * small && small > OF_ANOTHER_SIZE * large
}

const overlap = (a: number, lengthA: number, b: number, lengthB: number): number =>
  Math.max(0, Math.min(a + lengthA / 2, b + lengthB / 2) - Math.max(a - lengthA / 2, b - lengthB / 2))

/** Weighed by how surely each is there. */
function mixed(surer: SeenGlyph, other: SeenGlyph): SeenGlyph {
  const whole = surer.present + other.present
  if (whole <= 0) return surer
  const sums = new Map<string, number>()
  for (const { present, alternatives } of [surer, other])
    for (const { text, probability } of alternatives)
      sums.set(text, (sums.get(text) ?? 0) + (probability * present) / whole)
  const alternatives = [...sums]
    .map(([text, probability]) => ({ text, probability }))
    .sort((a, b) => b.probability - a.probability)
  return { ...surer, alternatives }
}
