import sharp from 'sharp'
import type { GreyWindow } from '../../../../src/core/imaging/index.ts'
import type { RandomStream } from '../../../../src/core/uncertainty/random.ts'
import type { Picture } from './picture.ts'

/** White normal noise; or, blurred, the grain of a paper seen through the lens, of the same standard deviation. */
export function noisy(picture: Picture, noise: number, random: RandomStream, grain = 0): Picture {
  const { width, height, data } = picture
  const white = new Float64Array(data.length)
  for (let i = 0; i < white.length; i++) white[i] = random.normal()
  const field = grain > 0 ? grained(white, width, height, grain) : white
  return { width, height, data: data.map((v, i) => v + noise * (field[i] ?? 0)) }
}

/** A field blurred by a Gaussian along both axes; white noise keeps its variance. The edges wrap round. */
export function grained(
  field: Float64Array,
  width: number,
  height: number,
  spread: number,
): Float64Array<ArrayBuffer> {
  const reach = Math.ceil(4 * spread)
  const bell = Array.from({ length: 2 * reach + 1 }, (_, i) =>
    Math.exp(-((i - reach) ** 2) / (2 * spread * spread)),
  )
  const power = Math.sqrt(bell.reduce((sum, k) => sum + k * k, 0))
  const kernel = Float64Array.from(bell, (k) => k / power)
  /** Where the places about each of a row or column of that length are, wrapped round. */
  const about = (length: number) =>
    Int32Array.from({ length: length + 2 * reach }, (_, i) => (i - reach + 2 * length) % length)
  const pass = (from: Float64Array, places: Int32Array, across: boolean) => {
    const out = new Float64Array(from.length)
    for (let y = 0; y < height; y++) {
      for (let x = 0; x < width; x++) {
        const first = across ? x : y
        let sum = 0
        for (let i = 0; i < kernel.length; i++) {
          const place = places[first + i] ?? 0
          sum += (kernel[i] ?? 0) * (from[across ? y * width + place : place * width + x] ?? 0)
        }
        out[y * width + x] = sum
      }
    }
    return out
  }
  return pass(pass(field, about(width), true), about(height), false)
}

/** As a scanner stores it: whole grey values from 0 to 255. */
export function rounded({ width, height, data }: Picture): GreyWindow {
  const stored = new Uint8Array(data.length)
  for (let i = 0; i < stored.length; i++)
    stored[i] = Math.min(255, Math.max(0, Math.round(data[i] ?? Number.NaN)))
  return { left: 0, top: 0, width, height, data: stored }
}

/** Through a real encoder and back. */
export async function throughJpeg(window: GreyWindow, quality = 70): Promise<GreyWindow> {
  const { width, height } = window
  const file = await sharp(window.data as Uint8Array, { raw: { width, height, channels: 1 } })
    .jpeg({ quality })
    .toBuffer()
  const data = await sharp(file).greyscale().raw().toBuffer()
  return { ...window, data: new Uint8Array(data) }
}

/** Black or white. */
export function oneBit(window: GreyWindow, threshold: number): GreyWindow {
  return { ...window, data: Uint8Array.from(window.data, (v) => (v < threshold ? 0 : 255)) }
}
