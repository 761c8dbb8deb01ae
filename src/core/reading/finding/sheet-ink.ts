import { type GreyWindow, type Ink, settledInk } from '../../imaging/index.ts'

/** Ground is told in squares of this side, pixels. */
const SQUARE = 32
/** Ground is what so many of a square's pixels are no lighter than; strokes cover the darker of them. */
const GROUND = 0.7
/** A pixel is ink where it differs from its ground by this share of what full ink does. */
const INK = 0.45
/** Full ink is what this share of the pixels that stand out clearly do not exceed. */
const FULL = 0.6
/** Only what stands out by so many sigmas of the noise tells what full ink is. */
const OF_NOISE = 4
/** Greys below which nothing is ink. */
const LEAST = 14

/** Which pixels of a picture are ink, 1 or 0, row by row. Linear in the pixels, and looks at each a few times only. */
export function sheetInk(picture: GreyWindow, ink: Ink = settledInk(picture) ?? 'dark'): Uint8Array {
  const { width, height, data } = picture
  const [across, down] = [Math.ceil(width / SQUARE), Math.ceil(height / SQUARE)]
  const flip = ink === 'dark' ? 0 : 255
  const ground = new Float32Array(across * down)
  const counts = new Uint32Array(256)
  for (let j = 0; j < down; j++)
    for (let i = 0; i < across; i++) {
      counts.fill(0)
      let n = 0
      for (let y = j * SQUARE; y < Math.min(height, (j + 1) * SQUARE); y += 2)
        for (let x = i * SQUARE; x < Math.min(width, (i + 1) * SQUARE); x += 2, n++) {
          const v = Math.abs(flip - (data[y * width + x] ?? 0)) | 0
          counts[v] = (counts[v] ?? 0) + 1
        }
      ground[j * across + i] = quantileOf(counts, n, GROUND)
    }
  const standing = (x: number, y: number): number =>
    (ground[Math.floor(y / SQUARE) * across + Math.floor(x / SQUARE)] ?? 0) -
    Math.abs(flip - (data[y * width + x] ?? 0))
  const noise = noiseOf(width, height, standing)
  const clear = Math.max(LEAST, OF_NOISE * noise)
  counts.fill(0)
  let n = 0
  for (let y = 0; y < height; y += 3)
    for (let x = 0; x < width; x += 3) {
      const v = Math.round(standing(x, y))
      if (v < clear) continue
      counts[Math.min(255, v)] = (counts[Math.min(255, v)] ?? 0) + 1
      n++
    }
  const least = Math.max(LEAST, INK * quantileOf(counts, n, FULL), 3 * noise)
  const out = new Uint8Array(width * height)
  for (let y = 0; y < height; y++) {
    const row = Math.floor(y / SQUARE) * across
    for (let x = 0; x < width; x++) {
      const at = y * width + x
      if ((ground[row + (x >> 5)] ?? 0) - Math.abs(flip - (data[at] ?? 0)) >= least) out[at] = 1
    }
  }
  return out
}

/** Sigma of the ground's noise, by the quartiles of what differs from it: a sheet is bare for the most part. */
function noiseOf(width: number, height: number, standing: (x: number, y: number) => number): number {
  const counts = new Uint32Array(256)
  let n = 0
  for (let y = 1; y < height; y += 5)
    for (let x = 1; x < width; x += 5, n++) {
      const v = Math.min(255, Math.max(0, Math.round(standing(x, y)) + 128))
      counts[v] = (counts[v] ?? 0) + 1
    }
  // The lighter half only, for ink is in the darker one; 0.674 sigma from the median to a quartile.
  return (quantileOf(counts, n, 0.5) - quantileOf(counts, n, 0.25)) / 0.674
}

function quantileOf(counts: Uint32Array, n: number, share: number): number {
  let left = share * n
  for (let v = 0; v < 256; v++) {
    left -= counts[v] ?? 0
    if (left <= 0) return v
  }
  return 255
}
