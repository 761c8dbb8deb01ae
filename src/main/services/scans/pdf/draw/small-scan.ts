import type { PDFPageProxy } from 'pdfjs-dist'
import { pictureLibrary } from '../../raster/open-raster.ts'
import type { Placed } from '../content/scanned-page.ts'
import { libraryPicture } from '../pixels/library-picture.ts'
import { inBytes } from '../pixels/pixels.ts'
import { turned } from '../pixels/turned.ts'

const QUALITY = 80

/**
 * A small picture of the scan that a page is, turned as the page shows it; painting it on a page first takes eight times
 * the memory, too much for a very large one.
 * @param side its longer side at most, pixels
 * @returns JPEG; undefined when the scan can't be decoded
 */
export async function smallScan(
  page: PDFPageProxy,
  { picture, turn }: Placed,
  side: number,
): Promise<Uint8Array | undefined> {
  const decoded = await libraryPicture(page, picture)
  if (decoded === undefined) return undefined
  const { width, height, samples, data } = inBytes(decoded.pixels)
  const sharp = await pictureLibrary()
  const small = await sharp(data, {
    raw: { width, height, channels: samples },
    limitInputPixels: false,
  })
    .resize(side, side, { fit: 'inside', withoutEnlargement: true })
    .raw()
    .toBuffer({ resolveWithObject: true })
  const shown = await turned(
    {
      width: small.info.width,
      height: small.info.height,
      samples: small.info.channels === 1 ? 1 : 3,
      bits: 8,
      data: small.data,
    },
    turn,
  )
  const raw = { width: shown.width, height: shown.height, channels: shown.samples }
  return sharp(shown.data, { raw }).jpeg({ quality: QUALITY }).toBuffer()
}
