import * as elements from '../../linear-algebra/elements-unchecked.ts'
import type { Piece, Strip } from '../strip/strip.ts'
import type { Guess } from './stroke-model.ts'

const { f64 } = elements

/** How the ground on one side of a piece of a stroke differs from that on the other. */
export interface BackgroundStep {
  /** Grey values, right less left as one goes along. */
  step: number
  /** Its variance for white noise of variance 1. */
  unit: number
}

/** @returns null when one side has too few pixels clear of the edge's blur */
export function backgroundStep(
  { along, across, value }: Strip,
  piece: Piece,
  guess: Guess,
): BackgroundStep | null {
  const clear = guess.width / 2 + 0.7 + 1.5 * guess.blur
  let left = 0
  let right = 0
  let lefts = 0
  let rights = 0
  for (let i = piece.first; i < piece.end; i++) {
    const u = f64(across, i) - guess.offset - guess.turn * f64(along, i)
    if (u < -clear) {
      left += f64(value, i)
      lefts++
    } else if (u > clear) {
      right += f64(value, i)
      rights++
    }
  }
  if (lefts < 3 || rights < 3) return null
  return { step: right / rights - left / lefts, unit: 1 / lefts + 1 / rights }
}
