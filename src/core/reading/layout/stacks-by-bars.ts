import { edgesRound } from '../glyphs/edges.ts'
import type { LatticeSlot } from '../lattice.ts'
import type { ProposedStack } from './item.ts'
import { FLAT, likelihoodOf, type PlacedGlyph } from './placed-glyph.ts'
import { boxOfGlyph } from './slot-of-glyph.ts'

const DIGITS = '0123456789'
/** A glyph this likely to be flat, or to be a digit, is tried as one. */
const TRIED = 0.3
/** Digits with a bar between them are a fraction so many times as often as the bar by itself tells. */
const BOTH_SIDES = 12
/** Where one side of a bar is empty, the bar is still one of a fraction whose figure is gone as often as it is not. */
const ONE_SIDE = 0.5

/** Stacked fractions whose bar was seen: digits over it and under it. @param high height of a full digit */
export function stacksByBars(glyphs: readonly PlacedGlyph[], high: number): ProposedStack[] {
  const found: ProposedStack[] = []
  for (const bar of glyphs) {
    const flat = likelihoodOf(bar.seen, FLAT)
    if (flat < TRIED || bar.right - bar.left < 0.2 * high) continue
    const [over, under] = [besideBar(bar, glyphs, -1, high), besideBar(bar, glyphs, 1, high)]
    const sure = likelihoodOf(bar.seen, '_')
    const proposed = (probability: number): ProposedStack => ({
      item: { kind: 'stack', over, under, between: slotOfBar(bar), sort: 'fraction' },
      glyphs: [bar, ...over, ...under],
      probability,
    })
    if (over.length > 0 && under.length > 0) {
      const odds =
        (BOTH_SIDES * (sure + 0.4 * (flat - sure))) / Math.max(0.02, 1 - flat + 0.6 * (flat - sure))
      found.push(proposed(odds / (1 + odds)))
    } else if (over.length + under.length > 0 && fits(bar, over.length > 0 ? over : under, high)) {
      const probability = ONE_SIDE * sure * bar.present
      if (probability > 0.1) found.push(proposed(probability))
    }
  }
  return found
}

/** A bar is about as long as what stands over it: a longer line is a line. */
function fits(bar: PlacedGlyph, side: readonly PlacedGlyph[], high: number): boolean {
  const { left, right } = edgesRound(side)
  return (
    bar.right - bar.left < 1.5 * (right - left) + 0.5 * high && bar.right - bar.left > 0.6 * (right - left)
  )
}

/** The row of digits next to a bar, in order: over it for −1, under it for 1. */
function besideBar(
  bar: PlacedGlyph,
  glyphs: readonly PlacedGlyph[],
  side: 1 | -1,
  high: number,
): readonly PlacedGlyph[] {
  const slack = 0.15 * high
  const near = glyphs.filter((glyph) => {
    if (glyph === bar || likelihoodOf(glyph.seen, DIGITS) < TRIED || glyph.height < 0.25 * high) return false
    const away = side * (glyph.middle - bar.middle)
    const x = (glyph.left + glyph.right) / 2
    return (
      away > 0.3 * glyph.height && away < 1.25 * glyph.height && x > bar.left - slack && x < bar.right + slack
    )
  })
  return near.sort((a, b) => a.left + a.right - b.left - b.right)
}

/** The bar is read as the slash between the two. */
const slotOfBar = (bar: PlacedGlyph): LatticeSlot => ({
  alternatives: [{ text: '/', probability: 1 }],
  box: boxOfGlyph(bar),
})
