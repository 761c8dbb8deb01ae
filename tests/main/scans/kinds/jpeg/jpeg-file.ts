import sharp, { type Sharp } from 'sharp'
import type { Picture } from '../picture.ts'

export interface JpegOptions {
  quality?: number
  progressive?: boolean
  /** Whether the colours have half the pixels along and across. */
  halved?: boolean
}

const rawOf = ({ width, height, samples, values }: Picture): Sharp =>
  sharp(Buffer.from(values), { raw: { width, height, channels: samples } })

/** A JPEG file of a picture of 8 bits, by sharp: grey of one kind of sample, colours else. */
export const jpegFile = (
  picture: Picture,
  { quality = 85, progressive = false, halved = false }: JpegOptions = {},
): Promise<Buffer> =>
  rawOf(picture)
    .toColourspace(picture.samples === 1 ? 'b-w' : 'srgb')
    .jpeg({ quality, progressive, chromaSubsampling: halved ? '4:2:0' : '4:4:4' })
    .toBuffer()

export const webpFile = (picture: Picture, lossless: boolean): Promise<Buffer> =>
  rawOf(picture).webp({ lossless, quality: 80 }).toBuffer()
