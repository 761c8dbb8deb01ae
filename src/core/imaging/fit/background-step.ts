import type { Strip } from '../strip/strip.ts'
import type { Guess } from './piece-equations.ts'

/** How the ground on one side of a piece of a stroke differs from that on the other. */
export interface BackgroundStep {
  /** Grey values, right less left as one goes along. */
  step: number
  /** Its variance for white noise of variance 1. */
  unit: number
}

/** @returns null when one side has too few pixels clear of the edge's blur */
export function backgroundStep(strip: Strip, piece: number, guess: Guess): BackgroundStep | null {
  const part = strip.pieces[piece]
  if (part === undefined) return null
  const clear = guess.width / 2 + 0.7 + 1.5 * guess.blur
  let [left, right, lefts, rights] = [0, 0, 0, 0]
  for (let i = part.first; i < part.end; i++) {
    const u = (strip.across[i] as number) - guess.offset - guess.turn * (strip.along[i] as number)
    if (u < -clear) {
      left += strip.value[i] as number
      lefts++
    } else if (u > clear) {
      right += strip.value[i] as number
      rights++
    }
  }
  if (lefts < 3 || rights < 3) return null
  return { step: right / rights - left / lefts, unit: 1 / lefts + 1 / rights }
}
