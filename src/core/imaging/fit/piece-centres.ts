import * as elements from '../../linear-algebra/elements-unchecked.ts'
import type { Piece, Strip } from '../strip/strip.ts'
import { type BackgroundStep, backgroundStep } from './background-step.ts'
import type { EdgeResponse } from './edge-response.ts'
import { OWN, PieceEquations } from './piece-equations.ts'
import { edgesOf, guessAt } from './strip-equations.ts'
import type { StripFit } from './strip-fit.ts'

const { f64 } = elements

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
  const equations = new PieceEquations()
  return strip.pieces.map((piece, k) => {
    const edge = edges[k]
    return edge === undefined ? null : centreOf(strip, piece, edge, fit, equations)
  })
}

function centreOf(
  strip: Strip,
  piece: Piece,
  edge: EdgeResponse,
  fit: StripFit,
  equations: PieceEquations,
): PieceCentre | null {
  const guess = guessAt(piece, fit)
  const limit = fit.width / 2 + 2
  let away = 0
  for (let step = 0; ; step++) {
    if (!equations.solve(strip, piece, edge, { ...guess, offset: guess.offset + away })) return null
    const { contrast, matrix, side } = equations
    const own = f64(matrix, 0)
    if (!(own > 1e-9)) return null
    const move = f64(side, 0) / (own * contrast || 1e-9)
    if (Math.abs(move) < 0.15 || step >= STEPS || Math.abs(away + move) > limit) {
      const c2 = Math.max(contrast ** 2, 1e-6)
      const spread = f64(matrix, 2 * OWN + 2)
      return {
        offset: guess.offset + Math.max(-limit, Math.min(limit, away + move)),
        unit: 1 / (own * c2),
        contrast,
        contrastUnit: equations.contrastVariance,
        wider: f64(side, 2) / (spread * contrast || 1e-9),
        widerUnit: 1 / (Math.max(spread, 1e-9) * c2),
        square: equations.squares / Math.max(equations.count - 5, 1),
        count: equations.count,
        ground: backgroundStep(strip, piece, guess),
      }
    }
    away += Math.max(-0.7, Math.min(0.7, move))
  }
}

/** Mean variance of the kept centres for white noise of variance 1, pixels²; some must be kept. */
export function meanUnit(centres: readonly (PieceCentre | null)[], kept: readonly boolean[]): number {
  const units = centres.flatMap((c, k) => (c !== null && kept[k] ? [c.unit] : []))
  return units.reduce((s, u) => s + u, 0) / units.length
}
