import * as elements from '../../linear-algebra/elements-unchecked.ts'
import { median } from '../../uncertainty/median.ts'
import { reason } from '../../words/core-words.ts'
import type { NoStrokeReason } from '../../words/strokes.ts'
import type { PieceCentre } from '../fit/piece-centres.ts'
import { guessAt } from '../fit/strip-equations.ts'
import { type Inflation, noiseInflation } from '../noise/residual-correlation.ts'
import { isCovered, type Piece } from '../strip/strip.ts'
import type { Traced } from '../trace/trace-stroke.ts'

const { f64 } = elements

/** What a stroke must be like to be told. */
export interface Demands {
  /** The least share of the pieces that must show it. */
  share: number
  /** The least length that shows it, pixels. */
  length: number
}

const FEWEST_PIECES = 3
const LEAST_CONTRAST = 6
/** Contrast over its own uncertainty, when all of the pieces agree; more is asked when many do not. */
const SURE = 7
/** The same of a stroke of fewer than four pieces. */
const SURE_OF_FEW = 25
/** Contrast over the noise of one pixel. */
const LEAST_OF_NOISE = 1.4
const MOST_UNSTEADY = 0.22
const WIDEST_BLUR = 4
/** Of the contrasts to both sides the lesser over the greater. */
const LEAST_OTHER_EDGE = 0.3

/** The inflation of variances by the noise's own correlation, and how sure the stroke is: contrast over uncertainty. */
export interface Acceptance extends Inflation {
  sure: number
}

/** A stroke that was traced and stood all demands. */
export interface AcceptedStroke {
  traced: Traced
  inflation: Acceptance
}

/** A piece that was kept, and its centre. */
interface KeptPiece {
  piece: Piece
  centre: PieceCentre
}

/** What the gates go by. The noise is looked at only when one asks for it: that takes longest. */
class StrokeEvidence {
  readonly traced: Traced
  readonly demands: Demands
  readonly kept: readonly KeptPiece[]
  /** Length that shows the stroke, pixels. */
  readonly seen: number
  /** Pieces that are in the picture. */
  readonly there: number
  #acceptance: Acceptance | undefined

  constructor(traced: Traced, demands: Demands) {
    const { strip, centres, judged } = traced
    this.traced = traced
    this.demands = demands
    this.kept = strip.pieces.flatMap((piece, k) => {
      const centre = centres[k]
      return judged.kept[k] && centre ? [{ piece, centre }] : []
    })
    this.seen = this.kept.reduce((sum, { piece }) => sum + piece.to - piece.from, 0)
    this.there = strip.pieces.filter(isCovered).length
  }

  get acceptance(): Acceptance {
    this.#acceptance ??= this.#weigh()
    return this.#acceptance
  }

  #weigh(): Acceptance {
    const { strip, fit, judged } = this.traced
    const inflation = noiseInflation(strip, fit, judged.kept)
    const noise = fit.variance * Math.max(inflation.even, 1)
    const count = this.kept.length
    const unit = this.kept.reduce((sum, { centre }) => sum + centre.contrastUnit, 0) / count
    return { ...inflation, sure: Math.abs(fit.contrast) / Math.sqrt((noise * unit) / count) }
  }
}

/** A demand that a stroke must stand: why it does not, or null. */
type Gate = (evidence: StrokeEvidence) => NoStrokeReason | null

/** In the order in which they are asked: those that are quickly told come first. */
const GATES: readonly Gate[] = [
  enoughAgrees,
  ({ traced: { fit } }) => (Math.abs(fit.contrast) < LEAST_CONTRAST ? reason('stroke.too-faint') : null),
  ({ traced: { fit } }) =>
    fit.blur > WIDEST_BLUR || fit.blur > 0.55 * fit.width + 1.2 ? reason('stroke.too-soft') : null,
  ({ traced: { fit }, seen }) => (fit.width > seen * 1.2 ? reason('stroke.blot') : null),
  standsOut,
  hasSteadyCourse,
  ({ traced }) => (otherEdge(traced) < LEAST_OTHER_EDGE ? reason('stroke.one-edge') : null),
]

/**
 * Whether what was traced is a stroke: seen in enough pieces, surely above the noise, with two edges that stand still
 * and a ground on both sides.
 * @returns why not, or the inflation of variances by the noise's own correlation
 */
export function acceptStroke(traced: Traced, demands: Demands): NoStrokeReason | Acceptance {
  const evidence = new StrokeEvidence(traced, demands)
  for (const gate of GATES) {
    const why = gate(evidence)
    if (why !== null) return why
  }
  return evidence.acceptance
}

function enoughAgrees({ kept, there, seen, demands }: StrokeEvidence): NoStrokeReason | null {
  const few = kept.length < FEWEST_PIECES || kept.length < demands.share * there || seen < demands.length
  return few ? reason('stroke.too-little-agrees', { seen }) : null
}

/** Whether it is surely above the noise, of one pixel too, and as strong all along. */
function standsOut({ traced: { fit }, kept, there, acceptance: { sure } }: StrokeEvidence) {
  const share = kept.length / there
  const all = share > 0.9 ? SURE : share > 0.6 ? 2 * SURE : 3 * SURE
  const faint = Math.abs(fit.contrast) < LEAST_OF_NOISE * Math.sqrt(fit.variance)
  const contrasts = kept.map(({ centre }) => centre.contrast / fit.contrast)
  return sure < (kept.length < 4 ? SURE_OF_FEW : all) || faint || unsteady(contrasts, 1 / sure)
    ? reason('stroke.not-above-ground')
    : null
}

/** Whether the contrast varies along the stroke by much more than noise does. @param sure relative uncertainty of its mean */
function unsteady(contrasts: readonly number[], uncertain: number): boolean {
  const n = contrasts.length
  const mean = contrasts.reduce((s, c) => s + c, 0) / n
  const spread = contrasts.reduce((s, c) => s + (c - mean) ** 2, 0) / (n - 1)
  const noise = uncertain ** 2 * n * (1 + 2 * Math.sqrt(2 / (n - 1)))
  return spread - noise > (MOST_UNSTEADY * mean) ** 2
}

function hasSteadyCourse({ traced: { fit }, kept }: StrokeEvidence): NoStrokeReason | null {
  const away = kept.map(({ piece, centre }) => Math.abs(centre.offset - guessAt(piece, fit).offset))
  return median(away) * 1.4826 > 0.3 + 0.12 * fit.width ? reason('stroke.no-steady-course') : null
}

/** The lesser of the contrasts to the ground left and right, over the greater; below 0 when they disagree. */
function otherEdge({ strip, fit, judged }: Traced): number {
  const { along, across, value } = strip
  const [left, ink, right] = [new Mean(), new Mean(), new Mean()]
  const far = fit.width / 2 + 0.5 + fit.blur
  const inside = Math.max(fit.width / 4, 0.5)
  strip.pieces.forEach((piece, k) => {
    if (!judged.kept[k]) return
    const guess = guessAt(piece, fit)
    for (let i = piece.first; i < piece.end; i++) {
      const u = f64(across, i) - guess.offset - guess.turn * f64(along, i)
      const of = u < -far ? left : u > far ? right : Math.abs(u) < inside ? ink : null
      of?.add(f64(value, i))
    }
  })
  if (left.count === 0 || ink.count === 0 || right.count === 0) return 0
  const sign = Math.sign(fit.contrast)
  const overLeft = sign * (ink.value - left.value)
  const overRight = sign * (ink.value - right.value)
  return Math.min(overLeft, overRight) / Math.max(overLeft, overRight, 1e-9)
}

class Mean {
  count = 0
  #sum = 0

  add(value: number): void {
    this.#sum += value
    this.count++
  }

  get value(): number {
    return this.#sum / this.count
  }
}
