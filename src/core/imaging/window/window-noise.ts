import * as elements from '../../linear-algebra/elements-unchecked.ts'
import { type GreyPicture, windowsOf } from './grey-picture.ts'
import type { GreyWindow } from './grey-window.ts'

const { f64, grey: greyOf } = elements

/** Grey values; a scan's rounding to whole values alone makes 0.29. */
const LEAST = 0.5
/** Of more pixels than this only some are looked at, evenly. */
const MOST_PIXELS = 20_000

/**
 * Noise of a picture from pixel to pixel, grey values: median absolute difference of a pixel from the mean of its two
 * neighbours in its row, as a standard deviation of white normal noise (0.6745, √1.5). Strokes hardly count in a median.
 */
export function windowNoise(picture: GreyPicture): number {
  const windows = windowsOf(picture)
  const pixels = windows.reduce((sum, { width, height }) => sum + width * height, 0)
  const skip = Math.max(1, Math.floor(pixels / MOST_PIXELS))
  const counts = new Float64Array(512)
  for (const window of windows) countDifferences(window, skip, counts)
  const total = counts.reduce((sum, here) => sum + here, 0)
  let sum = 0
  for (const [bin, here] of counts.entries()) {
    if (sum + here >= total / 2) {
      const median = (bin + (total / 2 - sum) / Math.max(here, 1)) / 4
      return Math.max(LEAST, median / (0.6745 * Math.sqrt(1.5)))
    }
    sum += here
  }
  return LEAST
}

/** Counts how far pixels are from the mean of their neighbours, in quarters of a grey value. */
function countDifferences({ width, height, data }: GreyWindow, skip: number, counts: Float64Array): void {
  for (let i = 1; i < width * height - 1; i += skip) {
    const x = i % width
    if (x === 0 || x === width - 1) continue
    const d = Math.abs(greyOf(data, i) - (greyOf(data, i - 1) + greyOf(data, i + 1)) / 2)
    const bin = Math.min(511, Math.floor(d * 4))
    counts[bin] = f64(counts, bin) + 1
  }
}
