import type { Ink } from '../../imaging/index.ts'
import type { InkField } from '../network/glyph-network.ts'
import type { Upright } from './sample-upright.ts'
import { slidingExtreme, slidingMean } from './sliding.ts'

/** Half a side, less half a pixel, of the least square that is ground and not a stroke: digits are some 22 pixels high. */
const STROKE_REACH = 6
/** Round which the ground is looked at for which way ink differs from it. */
const AROUND = 24
/** Ink that fades along a figure is told in squares of this side. */
const FADING = 24
/** Faded ink is brought up by this factor at most: where there is none, noise must not become ink. */
const MOST_GAIN = 1.8
/** So many pixels of strokes weigh as much as the whole does. */
const HEED = 8
/** Greys below which nothing is taken to be ink, whatever stands out most. */
const LEAST_INK = 4
/** What is darker than full ink goes on to here. */
const CEILING = 1.2
/** Of more pixels than this some tell as much of their shares as all. */
const MOST_SORTED = 8000
/** A normal distribution's sigma is this many times its median distance from its mean. */
const SIGMA_OF_MAD = 1.4826

/**
 * Ink of an upright rectangle: its ground lifted, which may differ from place to place, and set so that the ground is
 * about 0 and full ink about 1, also where the ink fades.
 * @param ink which way ink differs from its ground; found out unless it is given
 */
export function inkOf(upright: Upright, ink: Ink = inkOfUpright(upright)): InkField {
  const { width, height, grey } = upright
  if (grey.length === 0) return { width, height, ink: new Float32Array(0) }
  const sign = ink === 'dark' ? -1 : 1
  const standing = new Float32Array(grey.length)
  for (let i = 0; i < grey.length; i++) standing[i] = sign * (grey[i] ?? 0)
  const lifted = liftGround({ width, height, values: standing })
  return { width, height, ink: inParts({ width, height, values: lifted }) }
}

/** Which way ink differs from its ground, by what there is less of round each place: ground is the most. */
export function inkOfUpright({ width, height, grey }: Upright): Ink {
  const mean = slidingMean({ width, height, values: grey }, AROUND)
  let skewness = 0
  for (let i = 0; i < grey.length; i++) skewness += ((grey[i] ?? 0) - (mean[i] ?? 0)) ** 3
  return skewness > 0 ? 'light' : 'dark'
}

/**
 * How far each place stands above its ground. The ground is what is left when all that is narrower than a square is
 * taken down to what lies round it, which follows the rim of a stain; its own noise is averaged out first, and what that
 * leaves it too low by is the median of what stands above it.
 */
function liftGround(field: { width: number; height: number; values: Float32Array }): Float32Array {
  const { width, height, values } = field
  const calm = slidingMean(field, 1)
  const least = slidingExtreme({ width, height, values: calm }, STROKE_REACH, -1)
  const opened = slidingExtreme({ width, height, values: least }, STROKE_REACH, 1)
  const ground = slidingMean({ width, height, values: opened }, 3)
  const lifted = new Float32Array(values.length)
  for (let i = 0; i < values.length; i++) lifted[i] = (values[i] ?? 0) - (ground[i] ?? 0)
  const bias = medianOfGround(lifted)
  for (let i = 0; i < values.length; i++) lifted[i] = (lifted[i] ?? 0) - bias
  return lifted
}

/** The most of a picture is ground, so that a third lies below its middle or nearly. */
const medianOfGround = (lifted: Float32Array): number => quantile(sortedSome(lifted), 0.35)

/** In parts of full ink, which is told by what stands out most; a little less where the ink fades. */
function inParts({ width, height, values }: { width: number; height: number; values: Float32Array }) {
  const sorted = sortedSome(values)
  const noise = noiseOf(sorted)
  const full = levelOf(sorted, noise)
  const [across, down] = [Math.max(1, Math.round(width / FADING)), Math.max(1, Math.round(height / FADING))]
  const sums = new Float32Array(across * down)
  const counts = new Float32Array(across * down)
  const block = (x: number, y: number): number =>
    Math.min(down - 1, Math.floor((y * down) / height)) * across +
    Math.min(across - 1, Math.floor((x * across) / width))
  // The middle of a stroke only: its rims are pale in the best of inks.
  for (let y = 1; y + 1 < height; y++)
    for (let x = 1; x + 1 < width; x++) {
      const i = y * width + x
      const v = values[i] ?? 0
      if (v < Math.max(full / MOST_GAIN / 1.4, 4 * noise)) continue
      const ridge =
        (v >= (values[i - 1] ?? 0) && v >= (values[i + 1] ?? 0)) ||
        (v >= (values[i - width] ?? 0) && v >= (values[i + width] ?? 0))
      if (!ridge) continue
      const b = block(x, y)
      sums[b] = (sums[b] ?? 0) + v
      counts[b] = (counts[b] ?? 0) + 1
    }
  const level = levels(sums, counts, across, down, full)
  const ink = new Float32Array(values.length)
  for (let y = 0; y < height; y++) {
    const v = Math.min(down - 1, Math.max(0, ((y + 0.5) * down) / height - 0.5))
    const [j, fy] = [Math.floor(v), v - Math.floor(v)]
    const j1 = Math.min(down - 1, j + 1)
    for (let x = 0; x < width; x++) {
      const u = Math.min(across - 1, Math.max(0, ((x + 0.5) * across) / width - 0.5))
      const [i, fx] = [Math.floor(u), u - Math.floor(u)]
      const i1 = Math.min(across - 1, i + 1)
      const upper = (level[j * across + i] ?? full) * (1 - fx) + (level[j * across + i1] ?? full) * fx
      const lower = (level[j1 * across + i] ?? full) * (1 - fx) + (level[j1 * across + i1] ?? full) * fx
      const part = (values[y * width + x] ?? 0) / (upper * (1 - fy) + lower * fy)
      ink[y * width + x] = Math.max(0, Math.min(part, CEILING))
    }
  }
  return ink
}

/** Full ink by square: the mean of the strokes in it and beside it, drawn towards that of the whole where they are few. */
function levels(sums: Float32Array, counts: Float32Array, across: number, down: number, full: number) {
  const out = new Float32Array(across * down)
  for (let j = 0; j < down; j++)
    for (let i = 0; i < across; i++) {
      let [sum, count] = [HEED * full, HEED]
      for (let q = Math.max(0, j - 1); q <= Math.min(down - 1, j + 1); q++)
        for (let p = Math.max(0, i - 1); p <= Math.min(across - 1, i + 1); p++) {
          sum += sums[q * across + p] ?? 0
          count += counts[q * across + p] ?? 0
        }
      out[j * across + i] = Math.max(full / MOST_GAIN, sum / count)
    }
  return out
}

/** Sigma of the ground's noise, by the lower half of it, which no ink is in. */
function noiseOf(sorted: Float32Array): number {
  const middle = quantile(sorted, 0.35)
  return SIGMA_OF_MAD * Math.max(0, middle - quantile(sorted, 0.35 * 0.5))
}

/** Full ink: the middle of what stands out by more than half of what stands out most, a few pixels left out. */
function levelOf(sorted: Float32Array, noise: number): number {
  const most = quantile(sorted, 0.997)
  const least = Math.max(most / 2, 4 * noise, LEAST_INK)
  let from = sorted.length
  while (from > 0 && (sorted[from - 1] ?? 0) > least) from--
  const strokes = sorted.subarray(from)
  return Math.max(strokes.length === 0 ? least : quantile(strokes, 0.6), LEAST_INK)
}

/** Values in order, of many only some, evenly: what share of them lies below which does not change by it. */
function sortedSome(values: Float32Array): Float32Array {
  const step = Math.max(1, Math.floor(values.length / MOST_SORTED))
  return Float32Array.from(
    { length: Math.ceil(values.length / step) },
    (_, i) => values[i * step] ?? 0,
  ).sort()
}

/** Of sorted values, the one that a share of them lie below. */
function quantile(sorted: Float32Array, share: number): number {
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0
}
