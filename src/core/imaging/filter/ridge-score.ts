import { barAt, barWeight, type PieceMap } from './piece-map.ts'

/** A way along a map of pieces that may be a stroke. */
export interface Path {
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

/** The share of the pieces that must show at least the contrast that the way is given. */
const SHARE = 0.5

/** The best width for one way: strength by the contrast that half of the pieces reach. */
export function tryPath(
  map: PieceMap,
  steer: readonly number[],
  across: Float64Array,
  length: number,
  noise: number,
): Path | null {
  let best: Path | null = null
  for (let w = 0; w < map.widths.length; w++) {
    const width = map.widths[w] as number
    let n = 0
    for (let k = 0; k < map.pieces; k++) {
      const t = across[k] as number
      if (!map.there[k] || !(Math.abs(t) < 1e6)) continue
      HELD[n++] = barAt(map, w, k, t)
    }
    if (n < 3) continue
    const contrast = reached(n)
    const strength = (Math.abs(contrast) * barWeight(width, (length * n) / map.pieces)) / noise
    if (strength > 0 && (best === null || strength > best.strength)) {
      best = { steer: [...steer], width, contrast, strength }
    }
  }
  return best
}

const HELD = new Float64Array(256)
const SORTED = new Float64Array(256)

/**
 * The best width for each straight way at whole pixels across, from −most to most; of each width only those that the
 * map was filled in for.
 * @param strengths receives the strength of each
 */
export function parallelPaths(
  map: PieceMap,
  most: number,
  length: number,
  noise: number,
  strengths: Float64Array,
  mostOf: (width: number) => number = () => most,
): (Path | null)[] {
  const paths: (Path | null)[] = new Array(2 * most + 1).fill(null)
  strengths.fill(0)
  const all = map.there.every(Boolean)
  for (let w = 0; w < map.widths.length; w++) {
    const width = map.widths[w] as number
    const bars = map.bars[w] as Float32Array
    const within = Math.min(mostOf(width), most)
    const weight = barWeight(width, length / map.pieces) / noise
    for (let o = most - within; o <= most + within; o++) {
      const column = Math.round((o - most - map.low) * 2)
      if (column < 0 || column >= map.columns) continue
      let n = 0
      let positive = 0
      let negative = 0
      for (let k = 0; k < map.pieces; k++) {
        if (!all && !map.there[k]) continue
        const v = bars[k * map.columns + column] as number
        if (v > 0) positive++
        else if (v < 0) negative++
        HELD[n++] = v
      }
      if (n < 3 || Math.max(positive, negative) <= Math.floor(n * SHARE)) continue
      if (!mayExceed(n, (strengths[o] as number) / (weight * Math.sqrt(n)))) continue
      const contrast = reached(n)
      const strength = Math.abs(contrast) * weight * Math.sqrt(n)
      if (strength > (strengths[o] as number)) {
        strengths[o] = strength
        paths[o] = { steer: [o - most], width, contrast, strength }
      }
    }
  }
  return paths
}

/** Whether the contrast that the share of the pieces reaches can be more than this, of either sign. */
function mayExceed(n: number, limit: number): boolean {
  const needed = Math.min(n - 1, Math.floor(n * SHARE)) + 1
  let above = 0
  let below = 0
  for (let i = 0; i < n; i++) {
    const v = HELD[i] as number
    if (v > limit) above++
    else if (v < -limit) below++
  }
  return above >= needed || below >= needed
}

/** The contrast that the share of the pieces reaches, with its sign: by insertion, for the values are few. */
function reached(n: number): number {
  let positive = 0
  for (let i = 0; i < n; i++) {
    const v = HELD[i] as number
    if (v > 0) positive++
    else if (v < 0) positive--
  }
  const sign = positive < 0 ? -1 : 1
  const rank = Math.min(n - 1, Math.floor(n * SHARE))
  if (n > 24) {
    const part = SORTED.subarray(0, n)
    for (let i = 0; i < n; i++) part[i] = -sign * (HELD[i] as number)
    part.sort()
    return sign * Math.max(0, -(part[rank] as number))
  }
  for (let i = 0; i < n; i++) {
    const v = sign * (HELD[i] as number)
    let j = i
    while (j > 0 && (SORTED[j - 1] as number) < v) {
      SORTED[j] = SORTED[j - 1] as number
      j--
    }
    SORTED[j] = v
  }
  return sign * Math.max(0, SORTED[rank] as number)
}

/** Climbs from a way to the best one near it, the steps halved from the first to the last. */
export function climbPath(
  map: PieceMap,
  from: Path,
  across: Across,
  length: number,
  noise: number,
  [first, last]: readonly [number, number],
): Path {
  const places = new Float64Array(map.pieces)
  let best = from
  for (let step = first; step >= last; step /= 2) {
    for (let round = 0; round < 12; round++) {
      const before = best
      for (const steer of neighbours(best.steer, step)) {
        across(steer, places)
        const path = tryPath(map, steer, places, length, noise)
        if (path !== null && path.strength > best.strength * (1 + 1e-9)) best = path
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
export function distinct(paths: readonly Path[], most: number, apart: (a: Path, b: Path) => boolean): Path[] {
  const sorted = [...paths].sort((a, b) => b.strength - a.strength)
  const kept: Path[] = []
  for (const path of sorted) {
    if (kept.length >= most) break
    if (kept.every((k) => apart(k, path))) kept.push(path)
  }
  return kept
}
