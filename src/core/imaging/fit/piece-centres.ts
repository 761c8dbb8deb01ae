import type { Strip } from '../strip/strip.ts'
import { type BackgroundStep, backgroundStep } from './background-step.ts'
import { OWN, pieceEquations } from './piece-equations.ts'
import { edgesOf, guessAt } from './strip-equations.ts'
import type { StripFit } from './strip-fit.ts'

/** One piece by itself, the shape of the stroke being that of all. */
export interface PieceCentre {
  /** Of the stroke across the curve, in the middle of the piece, pixels. */
  offset: number
  /** Its variance for white noise of variance 1, pixels². */
  unit: number
  contrast: number
  contrastUnit: number
  /** Logarithm of its width over that of all, and the variance of that for noise of variance 1. */
  wider: number
  widerUnit: number
  /** Mean square of its residuals. */
  square: number
  count: number
  ground: BackgroundStep | null
}

const STEPS = 4

export function pieceCentres(strip: Strip, fit: StripFit): (PieceCentre | null)[] {
  const edges = edgesOf(strip, fit.blur)
  return strip.pieces.map((_, k) => {
    const edge = edges[k]
    if (edge === undefined) return null
    const guess = guessAt(strip, k, fit)
    const limit = fit.width / 2 + 2
    let away = 0
    for (let step = 0; ; step++) {
      const part = pieceEquations(strip, k, edge, { ...guess, offset: guess.offset + away })
      if (part === null) return null
      const own = part.matrix[0] as number
      const c2 = Math.max(part.contrast ** 2, 1e-6)
      if (!(own > 1e-9)) return null
      const move = (part.side[0] as number) / (own * part.contrast || 1e-9)
      const settled = Math.abs(move) < 0.15 || step >= STEPS || Math.abs(away + move) > limit
      const spread = part.matrix[2 * OWN + 2] as number
      if (settled) {
        return {
          offset: guess.offset + Math.max(-limit, Math.min(limit, away + move)),
          unit: 1 / (own * c2),
          contrast: part.contrast,
          contrastUnit: part.contrastVariance,
          wider: (part.side[2] as number) / (spread * part.contrast || 1e-9),
          widerUnit: 1 / (Math.max(spread, 1e-9) * c2),
          square: part.squares / Math.max(part.count - 5, 1),
          count: part.count,
          ground: backgroundStep(strip, k, guess),
        }
      }
      away += Math.max(-0.7, Math.min(0.7, move))
    }
  })
}

/** Mean variance of the kept centres for white noise of variance 1, pixels²; some must be kept. */
export function meanUnit(centres: readonly (PieceCentre | null)[], kept: readonly boolean[]): number {
  const units = centres.flatMap((c, k) => (c !== null && kept[k] ? [c.unit] : []))
  return units.reduce((s, u) => s + u, 0) / units.length
}
