import type { Figure } from '../../quantity/figure.ts'
import type { LengthContext } from '../../quantity/parse/parse-length.ts'
import type { QuantityKind } from '../../quantity/quantity-kind.ts'
import type { Uncertain } from '../../uncertainty/uncertain.ts'
import type { Lattice } from '../lattice.ts'
import { patternLattice } from '../pattern-lattice.ts'
import { type LatticeFigure, type Readings, readings } from '../readings.ts'
import { type Beside, besideFigure, likelihoodBeside, type ValueBeside } from './beside-scale.ts'
import { densityOfSize, densityOfValue } from './density-of-size.ts'
import { habitOfFigure } from './habit-of-figure.ts'
import { type KnownOfSheet, type SheetHabit, sheetHabit } from './sheet-habit.ts'

/** A figure that is hard to read, and all that is known beside it. */
export interface HardFigure extends KnownOfSheet {
  /** What the strokes could be; or, as text, what can be made out (see `patternLattice`). */
  readonly seen: Lattice | string
  /**
   * What the same dimension comes to otherwise, in mm, radians or how many: scaled, found, or worked out from others.
   * Uncertain numbers bring what they share with each other.
   */
  readonly scaled?: readonly (Uncertain | ValueBeside)[]
  /**
   * Standard deviation by which what is drawn may differ from its figure, in the unit of `scaled`, where the uncertainties
   * there leave it out; 0 unless said otherwise.
   */
  readonly drawn?: number
  /** What kind of figure it must be; a length unless said otherwise where something is scaled, else any. */
  readonly kind?: QuantityKind
  /** What a bare number and a gauge number mean. */
  readonly context?: LengthContext
  /** Probability that all that is made out is right, 0 to 1; 0.995 unless said otherwise. */
  readonly legible?: number
  /** How many texts to look at, at most; 5000 unless said otherwise. */
  readonly most?: number
}

/** What a figure could be. */
export interface RankedFigure {
  /** In the one standard notation. */
  readonly text: string
  readonly figure: Figure
  /** mm, radians or how many; null for a slope. */
  readonly value: number | null
  readonly kind: QuantityKind | null
  /** By all that is known. */
  readonly probability: number
  /** The same without what is scaled: by the strokes and by how the sheet writes its figures. */
  readonly withoutScale: number
  /**
   * What speaks for it, as natural logarithms: sums of all three compare two figures of one list, one by one only within
   * its column. `scale` is 0 throughout where nothing is scaled.
   */
  readonly why: { readonly strokes: number; readonly scale: number; readonly habit: number }
}

/** What a figure could be, likeliest first. With `none`, the probabilities sum to 1. */
export interface RankedFigures {
  readonly figures: readonly RankedFigure[]
  /** Probability that it is none of these: something is taken for what it is not, or was not looked at. */
  readonly none: number
  /** The same without what is scaled. */
  readonly noneWithoutScale: number
  /** The likeliest text of the strokes that is no figure. */
  readonly unparsed: string | null
}

const LEGIBLE = 0.995
const MOST = 5000

/** How many of the figures on drawings are written as the notation here does not know. Common practice, no source. */
const UNKNOWN_NOTATION = 0.01

/**
 * Lists what a figure that is hard to read could be, with probabilities: by Bayes' rule from the strokes, from what the
 * dimension comes to otherwise (see `likelihoodBeside`), and from how the sheet writes its figures (see `habitOfText`).
 * What the strokes may be beside all that was looked at is one more possibility, as common as figures are and of any size.
 * @throws NotationError for a pattern that can't be understood, RangeError for probabilities that are none
 */
export function rankFigures(hard: HardFigure): RankedFigures {
  const { seen, scaled = [], drawn, context = {}, legible = LEGIBLE, most = MOST } = hard
  const beside = besideFigure(scaled, drawn)
  const kind = hard.kind ?? (beside === null ? undefined : 'length')
  const habit = sheetHabit(hard, context)
  const lattice = typeof seen === 'string' ? patternLattice(seen) : seen
  const read = readings(lattice, { ...context, most })
  const weighed = read.figures
    .filter((one) => kind === undefined || one.kind === kind)
    .map((one) => weigh(one, habit, beside))
  const asFigures = sumOf(weighed, (w) => w.reading.probability * w.habit)
  const usual = SHARE_OF_USUAL * densityOfSize(beside?.value ?? TYPICAL_SIZE) * USUAL_SPACING
  const ofOthers = strokesOfOthers(read, legible, asFigures, usual)
  const anySize = beside === null ? 1 : densityOfValue(beside.value, kind ?? 'length')
  const none = ofOthers * anySize
  const withScale = sumOf(weighed, (w) => w.reading.probability * w.habit * w.scale) + none
  const without = asFigures + ofOthers
  const figures = weighed.map(({ reading, habit, scale }): RankedFigure => {
    const { text, figure, value, kind, probability } = reading
    return {
      text,
      figure,
      value,
      kind,
      probability: (probability * habit * scale) / withScale,
      withoutScale: (probability * habit) / without,
      why: { strokes: Math.log(probability), scale: Math.log(scale), habit: Math.log(habit) },
    }
  })
  figures.sort((a, b) => b.probability - a.probability)
  return {
    figures,
    none: none / withScale,
    noneWithoutScale: ofOthers / without,
    unparsed: read.unparsed.likeliest?.text ?? null,
  }
}

/**
 * The strokes of all that was not looked at, or is taken for what it is not, times how often figures are so. As a rule a
 * text is a figure there as often as among those that were looked at; next to none that were figures, now and then.
 * @param asFigures the same of what was looked at
 * @param usual how often a figure of some usual sort is just one text
 */
function strokesOfOthers(
  { unnamed, unsearched, unparsed }: Readings,
  legible: number,
  asFigures: number,
  usual: number,
): number {
  const looked = Math.max(1 - unnamed - unsearched, Number.EPSILON)
  const one = Math.max(asFigures / looked, NOW_AND_THEN * usual)
  const asItReads = UNKNOWN_NOTATION * usual * (unparsed.likeliest?.probability ?? 0)
  return (unnamed + unsearched + 1 - legible) * one + asItReads
}

/** How many of the texts that a figure turns into by one wrong glyph are figures as well. A guess, no source. */
const NOW_AND_THEN = 0.02

/** A size that is common, mm; how often such are written in one way; and how far apart they then are, mm. */
const TYPICAL_SIZE = 254
const SHARE_OF_USUAL = 0.05
const USUAL_SPACING = 6.35

interface Weighed {
  readonly reading: LatticeFigure
  /** Mean over its texts. */
  readonly habit: number
  readonly scale: number
}

function weigh(reading: LatticeFigure, habit: SheetHabit, beside: Beside | null): Weighed {
  const { figure, value } = reading
  return { reading, habit: habitOfFigure(reading, habit), scale: scaleOf(figure, value, beside) }
}

/** A limit says of its size only on which side of it the value lies. */
function scaleOf({ limit, notToScale }: Figure, value: number | null, beside: Beside | null): number {
  if (beside === null) return 1
  if (value === null) return SURELY_NOT
  return Math.max(SURELY_NOT, likelihoodBeside(beside, value, limit === undefined && notToScale !== true))
}

/** No density is less: its logarithm is to be a number. */
const SURELY_NOT = 1e-300

const sumOf = <T>(all: readonly T[], of: (one: T) => number): number =>
  all.reduce((sum, one) => sum + of(one), 0)
