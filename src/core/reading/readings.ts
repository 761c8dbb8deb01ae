import { angleInRadians } from '../quantity/angle.ts'
import type { Figure } from '../quantity/figure.ts'
import { formatFigure } from '../quantity/format/format-figure.ts'
import { figureOrNone } from '../quantity/parse/figure-or-none.ts'
import type { LengthContext } from '../quantity/parse/parse-length.ts'
import type { QuantityKind } from '../quantity/quantity-kind.ts'
import type { Lattice } from './lattice.ts'
import { beginsNoFigure, isNoFigure } from './no-figure.ts'
import { type LatticeText, textsByProbability } from './texts-by-probability.ts'

/** A figure that a lattice may be read as. */
export interface LatticeFigure {
  /** In the one standard notation, as `formatFigure` writes it. */
  readonly text: string
  /** As it is understood in its likeliest text. */
  readonly figure: Figure
  /** mm, radians or how many; null for a slope, which is none of these. */
  readonly value: number | null
  /** null for a slope. */
  readonly kind: QuantityKind | null
  /** By the strokes alone: of all its texts together. */
  readonly probability: number
  /** The texts that are this figure, as they would stand on the sheet, likeliest first. */
  readonly texts: readonly LatticeText[]
}

/** What a lattice may be read as. The probabilities of the figures and of what is none sum to 1. */
export interface Readings {
  /** Likeliest first. */
  readonly figures: readonly LatticeFigure[]
  /** What is a text but no figure, all together, and the likeliest such text as it reads; null where all are figures. */
  readonly unparsed: { readonly probability: number; readonly likeliest: LatticeText | null }
  /** Probability of the texts that were not looked at, each less likely than any that was. */
  readonly unsearched: number
  /** Probability that some slot holds a glyph without a name. */
  readonly unnamed: number
}

/** How a lattice is read. */
export interface ReadingContext extends LengthContext {
  /** How many texts to look at, at most; 400 unless said otherwise. */
  readonly most?: number
}

const MOST = 400

/**
 * Reads a lattice: its likeliest texts, each either a figure by the rules of the notation or none. No text is bent into a
 * figure that it is not: `1 38` is never `1 3/8`. Texts that come to the same figure count as one.
 * @param context what a bare number and a gauge number mean, and how far to search
 * @throws RangeError for probabilities that are none
 */
export function readings(lattice: Lattice, { most = MOST, ...context }: ReadingContext = {}): Readings {
  const limits = { most, isHopeless }
  const { texts, dismissed, unsearched, unnamed } = textsByProbability(lattice, limits)
  const known = new Map<string, string | null>()
  const found = new Map<string, Found>()
  let unparsed = dismissed.probability
  let likeliest = dismissed.likeliest
  for (const one of texts) {
    let key = known.get(one.text)
    if (key === undefined) {
      const figure = figureOrNone(one.text, context)
      key = figure === null ? null : formatFigure(figure, context)
      known.set(one.text, key)
      if (figure !== null && key !== null) {
        const before = found.get(key)
        if (before === undefined) found.set(key, { figure, probability: 0, texts: new Map() })
      }
    }
    const to = key === null ? undefined : found.get(key)
    if (to === undefined) {
      unparsed += one.probability
      if (one.probability > (likeliest?.probability ?? 0)) likeliest = one
    } else {
      to.probability += one.probability
      to.texts.set(one.text, (to.texts.get(one.text) ?? 0) + one.probability)
    }
  }
  const figures = [...found].map(([text, one]) => readingOf(text, one))
  figures.sort((a, b) => b.probability - a.probability)
  return { figures, unparsed: { probability: unparsed, likeliest }, unsearched, unnamed }
}

const isHopeless = (beginning: string, whole: boolean): boolean =>
  whole ? isNoFigure(beginning) : beginsNoFigure(beginning)

interface Found {
  readonly figure: Figure
  probability: number
  readonly texts: Map<string, number>
}

function readingOf(text: string, { figure, probability, texts }: Found): LatticeFigure {
  const all = [...texts].map(([text, probability]) => ({ text, probability }))
  all.sort((a, b) => b.probability - a.probability)
  return { text, figure, ...valueOfFigure(figure), probability, texts: all }
}

function valueOfFigure({ length, angle, count }: Figure): Pick<LatticeFigure, 'value' | 'kind'> {
  if (length !== undefined) return { value: Number(length.mm), kind: 'length' }
  if (angle !== undefined) return { value: angleInRadians(angle), kind: 'angle' }
  return count === undefined ? { value: null, kind: null } : { value: count, kind: 'count' }
}
