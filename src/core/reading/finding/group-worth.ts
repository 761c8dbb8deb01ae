import type { Figure } from '../../quantity/figure.ts'
import type { LengthContext } from '../../quantity/parse/parse-length.ts'
import { type Edges, edgesRound, glyphEdges } from '../glyphs/edges.ts'
import type { SeenGlyph } from '../glyphs/seen-glyph.ts'
import { surenessOf } from '../glyphs/sureness.ts'
import { layOut } from '../layout/lay-out.ts'
import { likelihoodOf } from '../layout/placed-glyph.ts'
import { rankFigures } from '../ranking/rank-figures.ts'

/** Glyphs that may be one figure, and how sure that is. */
export interface GlyphGroup {
  readonly glyphs: readonly SeenGlyph[]
  readonly edges: Edges
  /** Likeliest figure; null where they make none. */
  readonly figure: Figure | null
  readonly text: string | null
  /** That it is that figure. */
  readonly probability: number
  /** That it is some figure. */
  readonly some: number
}

/** More glyphs are no figure. */
const MOST = 26
/** Texts to look at: to tell whether it is a figure, the likeliest will do. */
const TEXTS = 400
/** More letters that no digit is among are words. */
const LETTERS = 9

const DIGITS = '0123456789'

/** A tolerance is no larger than this share of its size: `6 ± 1'-0` is a scale, its sign of equality misread. */
const LARGEST_TOLERANCE = 0.3

/** What glyphs make as one figure. */
export function groupOf(glyphs: readonly SeenGlyph[], context: LengthContext): GlyphGroup {
  const none = {
    glyphs,
    edges: edgesRound(glyphs.map(glyphEdges)),
    figure: null,
    text: null,
    probability: 0,
    some: 0,
  }
  const sure = glyphs.filter((glyph) => surenessOf(glyph) > 0.3)
  const digits = sure.filter((glyph) => likelihoodOf(glyph, DIGITS) > 0.25).length
  if (digits === 0 || glyphs.length > MOST) return none
  const letters = sure.filter(({ alternatives }) => /^[A-Z]$/.test(alternatives[0]?.text ?? '')).length
  if (letters > LETTERS + digits) return none
  const all = new Map<string, { figure: Figure; probability: number }>()
  for (const { lattice, weight } of layOut(glyphs)) {
    for (const { text, figure, withoutScale } of rankFigures({ seen: lattice, context, most: TEXTS })
      .figures) {
      if (isAbsurd(figure)) continue
      const before = all.get(text)?.probability ?? 0
      all.set(text, { figure, probability: before + weight * withoutScale })
    }
  }
  let best: [string, { figure: Figure; probability: number }] | undefined
  let some = 0
  for (const one of all) {
    some += one[1].probability
    if (best === undefined || one[1].probability > best[1].probability) best = one
  }
  if (best === undefined) return none
  return { ...none, figure: best[1].figure, text: best[0], probability: best[1].probability, some }
}

function isAbsurd({ length, tolerance }: Figure): boolean {
  if (length === undefined || tolerance === undefined) return false
  const most = Math.max(Number(tolerance.plus.mm), Number(tolerance.minus.mm))
  return most > LARGEST_TOLERANCE * Number(length.mm)
}
