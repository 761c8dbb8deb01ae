import { pictureLibrary } from '../../raster/open-raster.ts'
import type { Turn } from '../content/turn.ts'
import type { Pixels } from './pixels.ts'

/** The same picture turned and mirrored, pixel by pixel. Samples must be bytes. */
export async function turned(pixels: Pixels, { quarters, mirrored, across }: Turn): Promise<Pixels> {
  if (quarters === 0 && !mirrored) return pixels
  const { width, height, samples } = pixels
  const sharp = await pictureLibrary()
  const { data, info } = await sharp(pixels.data, {
    raw: { width, height, channels: samples },
    limitInputPixels: false,
  })
    .rotate(90 * quarters)
    // The library mirrors before it turns.
    .flip(mirrored && across)
    .flop(mirrored && !across)
    .toColourspace(samples === 1 ? 'b-w' : 'srgb')
    .raw()
    .toBuffer({ resolveWithObject: true })
  return { ...pixels, width: info.width, height: info.height, data }
}
