import * as elements from '../../linear-algebra/elements-unchecked.ts'
import type { Ink } from '../window/ink.ts'
import { PER_PIXEL } from './bar-filter.ts'
import { type BarGrid, barAt, barWeight } from './bar-grid.ts'

const { f32, f64 } = elements

/** A way along a grid of bars that may be a stroke. */
export interface Ridge {
  /** What the way is told by: its offsets at the places that steer it, pixels. */
  steer: number[]
  width: number
  /** Grey values that it differs from its ground, below 0 for a darker stroke. */
  contrast: number
  /** Signal to noise over all of its length. */
  strength: number
}

/** Where the way lies across, in each piece; NaN where it does not pass. */
export type Across = (steer: readonly number[], out: Float64Array) => void

/** What ridges of a grid are scored by: its bars, how long it is (pixels) and the noise of a pixel. */
export interface RidgeGrid {
  grid: BarGrid
  length: number
  noise: number
  /** Ways that are darker or lighter than their ground count alone; left out or null: both. */
  ink?: Ink | null
}

/** The sign of the bars of an ink; 0 for either. */
const signOf = (ink: Ink | null = null): number => (ink === null ? 0 : ink === 'dark' ? -1 : 1)

/** The share of the pieces that must show at least the contrast that the way is given. */
const SHARE = 0.5
const FEWEST_PIECES = 3
/** Of more values than this the ranks are told by sorting in place, of fewer by insertion. */
const FEW = 24

/**
 * The best width for one way: strength by the contrast that half of the pieces reach.
 * @param above only what is stronger than this is told
 */
export function scoreRidge(
  { grid, length, noise, ink }: RidgeGrid,
  steer: readonly number[],
  across: Float64Array,
  above = 0,
): Ridge | null {
  const { held } = grid
  const sign = signOf(ink)
  let best: Ridge | null = null
  let strongest = above
  for (const layer of grid.layers) {
    let n = 0
    for (let k = 0; k < grid.pieces; k++) {
      const t = f64(across, k)
      if (!grid.there[k] || Number.isNaN(t)) continue
      held[n++] = barAt(grid, layer, k, t)
    }
    if (n < FEWEST_PIECES) continue
    const weight = barWeight(layer.width, (length * n) / grid.pieces) / noise
    if (!mayExceed(grid, n, strongest / weight)) continue
    const contrast = reached(grid, n)
    if (sign * contrast < 0) continue
    const strength = Math.abs(contrast) * weight
    if (strength > strongest) {
      strongest = strength
      best = { steer: [...steer], width: layer.width, contrast, strength }
    }
  }
  return best
}

/**
 * The best width for each straight way at whole pixels across, from −most to most; of each width only those that the
 * grid was filled in for.
 * @param strengths receives the strength of each, of either ink
 */
export function parallelRidges(
  { grid, length, noise, ink }: RidgeGrid,
  most: number,
  strengths: Float64Array,
  mostOf: (width: number) => number = () => most,
): (Ridge | null)[] {
  const ridges = new Array<Ridge | null>(2 * most + 1).fill(null)
  const { held } = grid
  const sign = signOf(ink)
  strengths.fill(0)
  const all = grid.there.every(Boolean)
  for (const { width, bars } of grid.layers) {
    const within = Math.min(mostOf(width), most)
    const weight = barWeight(width, length / grid.pieces) / noise
    for (let o = most - within; o <= most + within; o++) {
      const column = Math.round((o - most - grid.low) * PER_PIXEL)
      if (column < 0 || column >= grid.columns) continue
      let n = 0
      let positive = 0
      let negative = 0
      for (let k = 0; k < grid.pieces; k++) {
        if (!all && !grid.there[k]) continue
        const v = f32(bars, k * grid.columns + column)
        if (v > 0) positive++
        else if (v < 0) negative++
        held[n++] = v
      }
      if (n < FEWEST_PIECES || Math.max(positive, negative) <= Math.floor(n * SHARE)) continue
      const counts = sign === 0 || sign > 0 === positive > negative
      const strongest = counts ? (ridges[o]?.strength ?? 0) : f64(strengths, o)
      if (!mayExceed(grid, n, strongest / (weight * Math.sqrt(n)))) continue
      const contrast = reached(grid, n)
      const strength = Math.abs(contrast) * weight * Math.sqrt(n)
      if (strength > f64(strengths, o)) strengths[o] = strength
      if (counts && strength > strongest) ridges[o] = { steer: [o - most], width, contrast, strength }
    }
  }
  return ridges
}

/** Whether the contrast that the share of the held values reaches can be more than this, of either sign. */
function mayExceed({ held }: BarGrid, n: number, limit: number): boolean {
  const needed = Math.min(n - 1, Math.floor(n * SHARE)) + 1
  let above = 0
  let below = 0
  for (let i = 0; i < n; i++) {
    const v = f64(held, i)
    if (v > limit) above++
    else if (v < -limit) below++
  }
  return above >= needed || below >= needed
}

/** The contrast that the share of the held values reaches, with its sign. */
function reached({ held, sorted }: BarGrid, n: number): number {
  let positive = 0
  for (let i = 0; i < n; i++) {
    const v = f64(held, i)
    if (v > 0) positive++
    else if (v < 0) positive--
  }
  const sign = positive < 0 ? -1 : 1
  const rank = Math.min(n - 1, Math.floor(n * SHARE))
  if (n > FEW) {
    const part = sorted.subarray(0, n)
    for (let i = 0; i < n; i++) part[i] = -sign * f64(held, i)
    part.sort()
    return sign * Math.max(0, -f64(part, rank))
  }
  for (let i = 0; i < n; i++) {
    const v = sign * f64(held, i)
    let j = i
    while (j > 0 && f64(sorted, j - 1) < v) {
      sorted[j] = f64(sorted, j - 1)
      j--
    }
    sorted[j] = v
  }
  return sign * Math.max(0, f64(sorted, rank))
}

/** Climbs from a way to the best one near it, the steps halved from the first to the last. */
export function climbRidge(
  on: RidgeGrid,
  from: Ridge,
  across: Across,
  [first, last]: readonly [number, number],
): Ridge {
  const places = new Float64Array(on.grid.pieces)
  let best = from
  for (let step = first; step >= last; step /= 2) {
    for (let round = 0; round < 12; round++) {
      const before = best
      for (const steer of neighbours(best.steer, step)) {
        across(steer, places)
        best = scoreRidge(on, steer, places, best.strength * (1 + 1e-9)) ?? best
      }
      if (best === before) break
    }
  }
  return best
}

/** Each steering place moved, and all of them together. */
function neighbours(steer: readonly number[], step: number): number[][] {
  const moves: number[][] = []
  for (const sign of [-1, 1]) {
    moves.push(steer.map((s) => s + sign * step))
    steer.forEach((_, i) => {
      moves.push(steer.map((s, j) => (i === j ? s + sign * step : s)))
    })
    if (steer.length === 2) moves.push(steer.map((s, j) => s + (j === 0 ? -1 : 1) * sign * step))
  }
  return moves
}

/** The strongest ways, each apart from those before it. */
export function distinct<R extends Ridge>(
  ridges: readonly R[],
  most: number,
  apart: (a: R, b: R) => boolean,
): R[] {
  const kept: R[] = []
  for (const ridge of [...ridges].sort((a, b) => b.strength - a.strength)) {
    if (kept.length >= most) break
    if (kept.every((k) => apart(k, ridge))) kept.push(ridge)
  }
  return kept
}
