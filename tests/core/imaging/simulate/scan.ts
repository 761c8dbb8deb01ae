import sharp from 'sharp'
import type { GreyWindow } from '../../../../src/core/imaging/index.ts'
import type { RandomStream } from '../../../../src/core/uncertainty/random.ts'
import type { Picture } from './picture.ts'

/** White normal noise; or, blurred, the grain of a paper seen through the lens, of the same standard deviation. */
export function noisy(picture: Picture, noise: number, random: RandomStream, grain = 0): Picture {
  const { width, height } = picture
  let field = Float64Array.from(picture.data, () => random.normal())
  if (grain > 0) field = grained(field, width, height, grain)
  return { width, height, data: picture.data.map((v, i) => v + noise * (field[i] as number)) }
}

/** A field blurred by a Gaussian along both axes; white noise keeps its variance. The edges wrap round. */
export function grained(
  field: Float64Array,
  width: number,
  height: number,
  spread: number,
): Float64Array<ArrayBuffer> {
  const reach = Math.ceil(4 * spread)
  const kernel = Array.from({ length: 2 * reach + 1 }, (_, i) =>
    Math.exp(-((i - reach) ** 2) / (2 * spread * spread)),
  )
  const power = Math.sqrt(kernel.reduce((sum, k) => sum + k * k, 0))
  const pass = (from: Float64Array, dx: number, dy: number) => {
    const out = new Float64Array(from.length)
    for (let y = 0; y < height; y++) {
      for (let x = 0; x < width; x++) {
        let sum = 0
        for (let i = -reach; i <= reach; i++) {
          const [u, v] = [(x + i * dx + 2 * width) % width, (y + i * dy + 2 * height) % height]
          sum += ((kernel[i + reach] as number) / power) * (from[v * width + u] as number)
        }
        out[y * width + x] = sum
      }
    }
    return out
  }
  return pass(pass(field, 1, 0), 0, 1)
}

/** As a scanner stores it: whole grey values from 0 to 255. */
export function rounded({ width, height, data }: Picture): GreyWindow {
  return {
    left: 0,
    top: 0,
    width,
    height,
    data: Uint8Array.from(data, (v) => Math.min(255, Math.max(0, Math.round(v)))),
  }
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
