import * as elements from '../../linear-algebra/elements-unchecked.ts'
import type { Strip } from './strip.ts'

const { f64 } = elements

/** Where a way lies across in the middle of a piece, pixels, and how much that changes per pixel along. */
export interface WayAcross {
  offset: number
  turn: number
}

/** The cross profile of a strip averaged along a way: every half pixel. */
export interface AlignedProfile {
  /** Place of the first bin's middle from the way, pixels. */
  low: number
  value: Float64Array
}

const PER_PIXEL = 2

/** @param offsets where the way lies across in each piece, with its turn per pixel; null for pieces that do not count */
export function alignedProfile(
  strip: Strip,
  offsets: readonly (WayAcross | null)[],
  half: number,
): AlignedProfile {
  const bins = Math.round(2 * half * PER_PIXEL)
  const total = new Float64Array(bins)
  const count = new Float64Array(bins)
  strip.pieces.forEach((piece, k) => {
    const way = offsets[k]
    if (!way) return
    for (let i = piece.first; i < piece.end; i++) {
      const u = f64(strip.across, i) - way.offset - way.turn * f64(strip.along, i)
      const bin = Math.floor((u + half) * PER_PIXEL)
      if (bin < 0 || bin >= bins) continue
      total[bin] = f64(total, bin) + f64(strip.value, i)
      count[bin] = f64(count, bin) + 1
    }
  })
  const value = total.map((t, i) => (f64(count, i) > 0 ? t / f64(count, i) : Number.NaN))
  return { low: -half + 0.5 / PER_PIXEL, value }
}

/** What an averaged profile shows of a stroke: edges from the way, and how far its ground goes on both sides. */
export interface ProfileEdges {
  left: number
  right: number
  /** Grey values, below 0 for a darker stroke. */
  contrast: number
  /** Pixels from the way until something else begins. */
  groundLeft: number
  groundRight: number
}

/** The ground beside a stroke is looked at this far from its edges, pixels. */
const WIDEST_GROUND = 6

/** No edge rises over more than this from a quarter to three quarters of the contrast: 4.4 px of blur. */
const SOFTEST = 6

/** @param width of the bar found, pixels; contrast: of it, with its sign */
export function profileEdges(profile: AlignedProfile, width: number, contrast: number): ProfileEdges | null {
  const { low, value } = profile
  const at = (u: number): number => {
    const x = (u - low) * PER_PIXEL
    const i = Math.max(0, Math.min(value.length - 2, Math.floor(x)))
    const f = Math.min(1, Math.max(0, x - i))
    const a = f64(value, i)
    const b = f64(value, i + 1)
    return Number.isNaN(a) ? b : Number.isNaN(b) ? a : a * (1 - f) + b * f
  }
  const sign = contrast < 0 ? -1 : 1
  const middle: number[] = []
  for (let u = -width / 4; u <= width / 4 + 0.01; u += 0.25) middle.push(at(u) * sign)
  const inside = middle.reduce((s, v) => s + v, 0) / middle.length
  const limit = -low - 0.5
  const edge = (way: -1 | 1): [number, number] | null => {
    const ground: number[] = []
    for (let u = width / 2 + 0.75; u <= width / 2 + 4; u += 0.5) ground.push(sign * at(way * u))
    ground.sort((a, b) => a - b)
    const level = ground[Math.floor(ground.length / 3)] ?? Number.NaN
    const half = (inside + level) / 2
    let before = inside
    for (let u = 0.25; u < limit; u += 0.25) {
      const v = sign * at(way * u)
      if (v < half) return [u - (0.25 * (half - v)) / Math.max(before - v, 1e-9), level]
      before = v
    }
    return null
  }
  const left = edge(-1)
  const right = edge(1)
  if (left === null || right === null) return null
  const height = inside - (left[1] + right[1]) / 2
  if (!(height > 0)) return null
  const rise = (way: -1 | 1, [from, level]: [number, number]): number => {
    const quarter = (inside - level) / 4
    let inner = from
    while (inner > 0 && sign * at(way * inner) < inside - quarter) inner -= 0.25
    let outer = from
    while (outer < limit && sign * at(way * outer) > level + quarter) outer += 0.25
    return outer - inner
  }
  if (rise(-1, left) > SOFTEST && rise(1, right) > SOFTEST) return null
  const groundEnd = (way: -1 | 1, [from, level]: [number, number]): number => {
    const start = from + 2
    for (let u = start; u < from + WIDEST_GROUND; u += 0.5) {
      if (Math.abs(sign * at(way * u) - level) > 0.35 * height) return Math.max(u - 1.5, from + 1.5)
    }
    return from + WIDEST_GROUND
  }
  return {
    left: -left[0],
    right: right[0],
    contrast: sign * height,
    groundLeft: -groundEnd(-1, left),
    groundRight: groundEnd(1, right),
  }
}
