import type { LengthContext } from '../../quantity/parse/parse-length.ts'
import type { QuantityKind } from '../../quantity/quantity-kind.ts'
import type { WeightedLattice } from '../layout/lay-out.ts'
import { rankFigures } from '../ranking/rank-figures.ts'
import { readings } from '../readings.ts'

/** A figure that glyphs may make, over all ways in which they may belong together. */
export interface LikelyFigure {
  readonly text: string
  /** mm, radians or how many; null for a slope. */
  readonly value: number | null
  readonly kind: QuantityKind | null
  readonly probability: number
}

/** What glyphs may make. */
export interface LikelyFigures {
  /** Likeliest first. */
  readonly figures: readonly LikelyFigure[]
  /** Probability, by the strokes alone, that they make a figure at all. */
  readonly fits: number
}

/**
 * How much what figures usually look like counts beside the strokes: their likelihood to this power. In full it would
 * outweigh strokes that are plain to see. Found by `training/reading/weigh.py`.
 */
const HABIT_COUNTS = 0.15
/** So much as a figure with one glyph wrong, a text that is none counts against those that are. Found likewise. */
const UNPARSED_COUNTS = 0.1

/** The figures that some glyphs may make, with probabilities that sum to 1 at most. */
export function figuresOfWays(ways: readonly WeightedLattice[], context: LengthContext): LikelyFigures {
  const all = new Map<string, LikelyFigure>()
  let fits = 0
  for (const { lattice, weight } of ways) {
    if (lattice.slots.length === 0) continue
    const { unparsed, unnamed, unsearched } = readings(lattice, context)
    const ranked = rankFigures({ seen: lattice, context }).figures.map((figure) => ({
      figure,
      strokes: Math.exp(figure.why.strokes),
      worth: Math.exp(figure.why.strokes + HABIT_COUNTS * figure.why.habit),
    }))
    const strokes = ranked.reduce((sum, one) => sum + one.strokes, 0)
    const worth = ranked.reduce((sum, one) => sum + one.worth, 0)
    if (strokes <= 0 || worth <= 0) continue
    const share = strokes / (strokes + unnamed + unsearched + UNPARSED_COUNTS * unparsed.probability)
    fits += weight * strokes
    for (const one of ranked) {
      const { text, value, kind } = one.figure
      const before = all.get(text)?.probability ?? 0
      all.set(text, { text, value, kind, probability: before + (weight * share * one.worth) / worth })
    }
  }
  return { figures: [...all.values()].sort((a, b) => b.probability - a.probability), fits }
}
