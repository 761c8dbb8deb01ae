import sharp from 'sharp'
import type { Picture } from './picture.ts'

/** Samples of a page of a picture file as it stores them, by libvips, strict of every fault; palettes become colours. */
export async function readPicture(input: string | Buffer, page = 1): Promise<Picture> {
  const { space = 'srgb', depth } = await sharp(input, { page: page - 1 }).metadata()
  const deep = depth === 'ushort'
  const { data, info } = await sharp(input, { page: page - 1, failOn: 'warning', limitInputPixels: false })
    .pipelineColourspace(space)
    .toColourspace(space)
    .raw({ depth: deep ? 'ushort' : 'uchar' })
    .toBuffer({ resolveWithObject: true })
  const values = deep ? new Uint16Array(data.buffer, data.byteOffset, data.length / 2) : data
  return {
    width: info.width,
    height: info.height,
    samples: info.channels,
    bits: deep ? 16 : 8,
    values: Uint16Array.from(values),
  }
}
