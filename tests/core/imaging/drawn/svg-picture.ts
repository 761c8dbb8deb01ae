import sharp from 'sharp'
import type { Picture } from '../simulate/picture.ts'

/** Each pixel is drawn as so many each way, and averaged: what draws the SVG rounds its own edges coarsely. */
const FINE = 4

/**
 * How much ink lies on each pixel, 0 to 1, of a drawing in SVG: black on white, pixels its unit, its centre lines where the
 * drawing says. Drawn by librsvg, which knows nothing of how strokes are looked for.
 * @param blur standard deviation of a lens's blur, pixels
 */
export async function inkOfSvg(
  drawing: string,
  width: number,
  height: number,
  blur: number,
): Promise<Picture> {
  const svg =
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width * FINE}" height="${height * FINE}" ` +
    `viewBox="0 0 ${width} ${height}"><rect width="${width}" height="${height}" fill="white"/>${drawing}</svg>`
  const { data, info } = await greysOfSvg(svg)
  const ink = new Float64Array(width * height)
  for (let y = 0; y < info.height; y++) {
    for (let x = 0; x < info.width; x++) {
      const at = Math.floor(y / FINE) * width + Math.floor(x / FINE)
      const grey = data[(y * info.width + x) * info.channels] as number
      ink[at] = (ink[at] as number) + (255 - grey) / 255 / FINE ** 2
    }
  }
  return { width, height, data: blur > 0 ? blurred(ink, width, height, blur) : ink }
}

const OF_SVG = { operation: ['VipsForeignLoadSvg'] }
let last: Promise<unknown> = Promise.resolve()

/**
 * Drawings, one after another. Where the program's own reader of scans has run in the same process, the library draws no
 * SVG; it may for as long as this takes, so that trials that come after it find it as it was.
 * @returns raw pixels, black on white, of a drawing that is SVG as a whole
 */
export function greysOfSvg(svg: string) {
  const drawn = last.then(async () => {
    sharp.unblock(OF_SVG)
    try {
      return await sharp(Buffer.from(svg))
        .flatten({ background: 'white' })
        .greyscale()
        .raw()
        .toBuffer({ resolveWithObject: true })
    } finally {
      sharp.block(OF_SVG)
    }
  })
  last = drawn.catch(() => undefined)
  return drawn
}

/** A Gaussian's blur; beyond the border lies what is at it. */
function blurred(
  field: Float64Array,
  width: number,
  height: number,
  spread: number,
): Float64Array<ArrayBuffer> {
  const reach = Math.ceil(4 * spread + 1)
  const bell = Float64Array.from({ length: 2 * reach + 1 }, (_, i) =>
    Math.exp(-((i - reach) ** 2) / (2 * spread ** 2)),
  )
  const whole = bell.reduce((sum, k) => sum + k, 0)
  /** Along rows of a length, `step` from one value to the next, of so many `rows` that begin `apart`. */
  const pass = (from: Float64Array, length: number, step: number, rows: number, apart: number) => {
    const out = new Float64Array(from.length)
    for (let row = 0; row < rows; row++) {
      for (let x = 0; x < length; x++) {
        let sum = 0
        for (let k = -reach; k <= reach; k++) {
          const at = Math.min(length - 1, Math.max(0, x + k))
          sum += (bell[k + reach] as number) * (from[row * apart + at * step] as number)
        }
        out[row * apart + x * step] = sum / whole
      }
    }
    return out
  }
  return pass(pass(field, width, 1, height, width), height, width, width, 1)
}
