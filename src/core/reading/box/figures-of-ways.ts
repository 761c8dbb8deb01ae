import type { LengthContext } from '../../quantity/parse/parse-length.ts'
import type { QuantityKind } from '../../quantity/quantity-kind.ts'
import type { WeightedLattice } from '../layout/lay-out.ts'
import { habitOfFigure } from '../ranking/habit-of-figure.ts'
import { sheetHabit } from '../ranking/sheet-habit.ts'
import { type LatticeFigure, readings } from '../readings.ts'

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
 * outweigh strokes that are plain to see. Chosen on 51 figures that `training/reading/boxes.py` drew, which hardly told.
 */
const HABIT_COUNTS = 0.15
/** So much as a figure with one glyph wrong, a text that is none counts against those that are. Chosen likewise. */
const UNPARSED_COUNTS = 0.1

/** No size is nought: a round by itself is a hole, so many times in one. Common practice, no source. */
const NOUGHT = 0.02

const asSize = (one: LatticeFigure): LatticeFigure =>
  one.value === 0 ? { ...one, probability: NOUGHT * one.probability } : one

/** Texts that are looked at for each way, at most: what is less likely than so many others is hardly it. */
const MOST_TEXTS = 200

/** The figures that some glyphs may make, with probabilities that sum to 1 at most. */
export function figuresOfWays(ways: readonly WeightedLattice[], context: LengthContext): LikelyFigures {
  const habit = sheetHabit({}, context)
  const all = new Map<string, LikelyFigure>()
  let fits = 0
  for (const { lattice, weight } of ways) {
    if (lattice.slots.length === 0) continue
    const found = readings(lattice, { ...context, most: MOST_TEXTS })
    const read = { ...found, figures: found.figures.map(asSize) }
    const worths = read.figures.map((one) => one.probability * habitOfFigure(one, habit) ** HABIT_COUNTS)
    const strokes = read.figures.reduce((sum, { probability }) => sum + probability, 0)
    const worth = worths.reduce((sum, one) => sum + one, 0)
    if (strokes <= 0 || worth <= 0) continue
    const none = read.unnamed + read.unsearched + UNPARSED_COUNTS * read.unparsed.probability
    fits += weight * strokes
    read.figures.forEach(({ text, value, kind }, i) => {
      const before = all.get(text)?.probability ?? 0
      const probability = (weight * strokes * (worths[i] ?? 0)) / (worth * (strokes + none))
      all.set(text, { text, value, kind, probability: before + probability })
    })
  }
  return { figures: [...all.values()].sort((a, b) => b.probability - a.probability), fits }
}

/** What several looks at a figure make together, each counted by its share; alike unless shares are given. */
export function meanOfLikely(
  all: readonly LikelyFigures[],
  shares: readonly number[] = all.map(() => 1),
): LikelyFigures {
  const whole = shares.reduce((sum, share) => sum + share, 0)
  const mean = new Map<string, LikelyFigure>()
  let fits = 0
  for (const [i, likely] of all.entries()) {
    const share = (shares[i] ?? 0) / whole
    fits += share * likely.fits
    for (const one of likely.figures) {
      const before = mean.get(one.text)?.probability ?? 0
      mean.set(one.text, { ...one, probability: before + share * one.probability })
    }
  }
  return { figures: [...mean.values()].sort((a, b) => b.probability - a.probability), fits }
}
