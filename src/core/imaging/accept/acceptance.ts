import { median } from '../../uncertainty/median.ts'
import { guessAt } from '../fit/strip-equations.ts'
import { type Inflation, noiseInflation } from '../noise/residual-correlation.ts'
import { isCovered } from '../strip/strip.ts'
import type { Traced } from '../trace/trace-stroke.ts'

/** What a stroke must be like to be told. */
export interface Demands {
  /** The least share of the pieces that must show it. */
  share: number
  /** The least length that shows it, pixels. */
  length: number
}

const LEAST_CONTRAST = 6
/** Contrast over its own uncertainty, when all of the pieces agree; more is asked when many do not. */
const SURE = 7
/** Contrast over the noise of one pixel. */
const LEAST_OF_NOISE = 1.4
const MOST_UNSTEADY = 0.22
const WIDEST_BLUR = 4

export const BY_HAND = 'Pick by hand, or go nearer.'

/** The inflation of variances by the noise's own correlation, and how sure the stroke is: contrast over uncertainty. */
export interface Acceptance extends Inflation {
  sure: number
}

/** A stroke that was traced and stood all demands. */
export interface AcceptedStroke {
  traced: Traced
  inflation: Acceptance
}

/**
 * Whether what was traced is a stroke: seen in enough pieces, surely above the noise, with two edges that stand still
 * and a ground on both sides.
 * @returns a sentence why not, or the inflation of variances by the noise's own correlation
 */
export function acceptStroke(traced: Traced, demands: Demands): string | Acceptance {
  const { strip, fit, centres, judged } = traced
  const kept = strip.pieces.flatMap((p, k) => (judged.kept[k] ? [{ ...p, k }] : []))
  const seen = kept.reduce((s, p) => s + p.to - p.from, 0)
  const there = strip.pieces.filter(isCovered).length
  if (kept.length < 3 || kept.length < demands.share * there || seen < demands.length) {
    return `No clear stroke here: only ${Math.round(seen)} px of it agree. ${BY_HAND}`
  }
  if (Math.abs(fit.contrast) < LEAST_CONTRAST) return `Too faint to be told from its ground here. ${BY_HAND}`
  if (fit.blur > WIDEST_BLUR || fit.blur > 0.55 * fit.width + 1.2) {
    return `What is here is too soft for a stroke: a stain or a shadow, perhaps. ${BY_HAND}`
  }
  if (fit.width > seen * 1.2) return `What is here is as wide as it is long: a blot, perhaps. ${BY_HAND}`
  const inflation = noiseInflation(strip, fit, judged.kept)
  const noise = fit.variance * Math.max(inflation.even, 1)
  const unit = kept.reduce((s, p) => s + (centres[p.k]?.contrastUnit ?? 0), 0) / kept.length
  const sure = Math.abs(fit.contrast) / Math.sqrt((noise * unit) / kept.length)
  const share = kept.length / there
  const needed = kept.length < 4 ? 25 : share > 0.9 ? SURE : share > 0.6 ? 2 * SURE : 3 * SURE
  const faint = Math.abs(fit.contrast) < LEAST_OF_NOISE * Math.sqrt(fit.variance)
  const contrasts = kept.map((p) => (centres[p.k]?.contrast ?? 0) / fit.contrast)
  if (sure < needed || faint || unsteady(contrasts, 1 / sure)) {
    return `Nothing here stands out clearly from the unevenness of the ground. ${BY_HAND}`
  }
  const away = median(
    kept.map((p) => Math.abs((centres[p.k]?.offset ?? 0) - guessAt(strip, p.k, fit).offset)),
  )
  if (away * 1.4826 > 0.3 + 0.12 * fit.width) return `What is here has no steady course. ${BY_HAND}`
  const sides = oneSided(traced)
  if (sides < 0.3)
    return `There is one edge here and no other: the border of an area, not a stroke. ${BY_HAND}`
  return { ...inflation, sure }
}

/** Whether the contrast varies along the stroke by much more than noise does. @param sure relative uncertainty of its mean */
function unsteady(contrasts: readonly number[], uncertain: number): boolean {
  const n = contrasts.length
  const mean = contrasts.reduce((s, c) => s + c, 0) / n
  const spread = contrasts.reduce((s, c) => s + (c - mean) ** 2, 0) / (n - 1)
  const noise = uncertain ** 2 * n * (1 + 2 * Math.sqrt(2 / (n - 1)))
  return spread - noise > (MOST_UNSTEADY * mean) ** 2
}

/** The lesser of the contrasts to the ground left and right, over the greater; below 0 when they disagree. */
function oneSided({ strip, fit, judged }: Traced): number {
  const sums = [0, 0, 0]
  const counts = [0, 0, 0]
  const far = fit.width / 2 + 0.5 + fit.blur
  strip.pieces.forEach((piece, k) => {
    if (!judged.kept[k]) return
    const guess = guessAt(strip, k, fit)
    for (let i = piece.first; i < piece.end; i++) {
      const u = (strip.across[i] as number) - guess.offset - guess.turn * (strip.along[i] as number)
      const side = u < -far ? 0 : u > far ? 2 : Math.abs(u) < Math.max(fit.width / 4, 0.5) ? 1 : -1
      if (side < 0) continue
      sums[side] = (sums[side] as number) + (strip.value[i] as number)
      counts[side] = (counts[side] as number) + 1
    }
  })
  const mean = (i: number) => (sums[i] as number) / Math.max(counts[i] as number, 1)
  if (counts.some((c) => c === 0)) return 0
  const sign = Math.sign(fit.contrast)
  const left = sign * (mean(1) - mean(0))
  const right = sign * (mean(1) - mean(2))
  return Math.min(left, right) / Math.max(left, right, 1e-9)
}
