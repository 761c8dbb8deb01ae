import type { Pixel } from '../../geometry/frames.ts'
import * as elements from '../../linear-algebra/elements-unchecked.ts'
import type { GreyWindow } from '../window/grey-window.ts'
import type { Ink } from '../window/ink.ts'

const { f32, f64, grey: greyOf } = elements

/** Directions across strokes that are told apart, evenly over half a turn. */
export const DIRECTIONS = 8
/** From the middle of a stroke to where its ground is looked at, pixels: for strokes about 2, 4, 8 and 14 px wide. */
const BESIDE = [3, 5, 8, 12] as const
/** Along the stroke so far to both sides is looked at as well, pixels. */
const ALONG = 3
/** Half of the square whose mean a stroke stands out of, pixels; and by which share of what it stands out of its ground. */
const AROUND = 16
const ABOVE_MEAN = 0.4
/** A pixel that is less of a stroke than this share of what is looked for is none. */
const SHARE = 0.4

/** Which pixels of a window look like a piece of a stroke, and in which directions. */
export interface StrokeMap {
  left: number
  top: number
  width: number
  height: number
  /** For each pixel one bit for each direction across in which it or a pixel next to it lies on a stroke. */
  bits: Uint8Array
  /** How far each pixel stands out of its ground, grey values; 0 where it is on no stroke. */
  strength: Float32Array
}

/** Where a middle and the ground to both sides of it are looked at, as steps in a list of pixels by rows. */
interface Looks {
  middle: number[]
  sides: [number[], number[]][]
}

/**
 * The pixels of a window that look like pieces of such strokes as lie near a place.
 * @param within how far from the place that is, pixels
 * @param least so little contrast is none, grey values
 * @returns null where no stroke is near
 */
export function strokeMap(
  grey: GreyWindow,
  ink: Ink,
  { at, within, least }: { at: Pixel; within: number; least: number },
): StrokeMap | null {
  const { left, top, width, height } = grey
  const smooth = smoothed(grey, ink)
  const looks = Array.from({ length: DIRECTIONS }, (_, k) => looksAcross((k * Math.PI) / DIRECTIONS, width))
  const margin = Math.max(...BESIDE) + ALONG + 2
  const [cx, cy] = [at[0] - left - 0.5, at[1] - top - 0.5]
  let nearby = 0
  for (
    let y = Math.max(margin, Math.ceil(cy - within));
    y <= Math.min(height - margin - 1, cy + within);
    y++
  ) {
    for (
      let x = Math.max(margin, Math.ceil(cx - within));
      x <= Math.min(width - margin - 1, cx + within);
      x++
    ) {
      if (Math.hypot(x - cx, y - cy) > within) continue
      for (const look of looks) nearby = Math.max(nearby, standsOut(smooth, y * width + x, look))
    }
  }
  if (nearby <= least) return null
  const enough = SHARE * nearby
  const own = new Uint8Array(width * height)
  const strength = new Float32Array(width * height)
  const sums = summed(smooth, width, height)
  for (let y = margin; y < height - margin; y++) {
    for (let x = margin; x < width - margin; x++) {
      const i = y * width + x
      // Most of a sheet is paper, and all else costs a hundred times as much.
      if (f32(smooth, i) - meanAround(sums, x, y, width, height) < ABOVE_MEAN * enough) continue
      looks.forEach((look, k) => {
        const out = standsOut(smooth, i, look)
        if (out < enough) return
        own[i] = (own[i] ?? 0) | (1 << k)
        strength[i] = Math.max(f32(strength, i), out)
      })
    }
  }
  return { left, top, width, height, bits: spread(own, width, height), strength }
}

/** The mean of each pixel and its eight neighbours, ink above paper. */
function smoothed({ width, height, data }: GreyWindow, ink: Ink): Float32Array {
  const sign = ink === 'dark' ? -1 / 9 : 1 / 9
  const out = new Float32Array(width * height)
  for (let y = 1; y < height - 1; y++) {
    for (let x = 1; x < width - 1; x++) {
      const i = y * width + x
      let sum = 0
      for (let row = i - width; row <= i + width; row += width)
        sum += greyOf(data, row - 1) + greyOf(data, row) + greyOf(data, row + 1)
      out[i] = sign * sum
    }
  }
  return out
}

/** Sums of all pixels above and to the left, the outermost row and column left out. */
function summed(smooth: Float32Array, width: number, height: number): Float64Array {
  const sums = new Float64Array(width * height)
  for (let y = 1; y < height; y++) {
    let row = 0
    for (let x = 1; x < width; x++) {
      row += f32(smooth, y * width + x)
      sums[y * width + x] = f64(sums, (y - 1) * width + x) + row
    }
  }
  return sums
}

function meanAround(sums: Float64Array, x: number, y: number, width: number, height: number): number {
  const [x0, x1] = [Math.max(0, x - AROUND - 1), Math.min(width - 2, x + AROUND)]
  const [y0, y1] = [Math.max(0, y - AROUND - 1), Math.min(height - 2, y + AROUND)]
  const all =
    f64(sums, y1 * width + x1) -
    f64(sums, y0 * width + x1) -
    f64(sums, y1 * width + x0) +
    f64(sums, y0 * width + x0)
  return all / ((x1 - x0) * (y1 - y0))
}

function looksAcross(direction: number, width: number): Looks {
  const [nx, ny] = [Math.cos(direction), Math.sin(direction)]
  const step = (across: number, along: number): number =>
    Math.round(ny * across + nx * along) * width + Math.round(nx * across - ny * along)
  const row = (across: number): number[] => [-ALONG, 0, ALONG].map((along) => step(across, along))
  return { middle: row(0), sides: BESIDE.map((far) => [row(far), row(-far)]) }
}

/** How far a pixel stands out of its ground on both sides, by the width that shows it best. */
function standsOut(smooth: Float32Array, i: number, { middle, sides }: Looks): number {
  const here = mean(smooth, i, middle)
  let best = 0
  for (const [one, other] of sides) {
    const out = here - Math.max(mean(smooth, i, one), mean(smooth, i, other))
    if (out > best) best = out
  }
  return best
}

function mean(smooth: Float32Array, i: number, steps: readonly number[]): number {
  let sum = 0
  for (const step of steps) sum += f32(smooth, i + step)
  return sum / steps.length
}

/** Each pixel with the directions of its neighbours too: a way that is guessed lies up to a pixel beside its stroke. */
function spread(own: Uint8Array, width: number, height: number): Uint8Array {
  const out = new Uint8Array(own.length)
  for (let y = 1; y < height - 1; y++) {
    for (let x = 1; x < width - 1; x++) {
      const i = y * width + x
      let bits = 0
      for (let row = i - width; row <= i + width; row += width)
        bits |= (own[row - 1] ?? 0) | (own[row] ?? 0) | (own[row + 1] ?? 0)
      out[i] = bits
    }
  }
  return out
}
