import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { PDFPageProxy } from 'pdfjs-dist'
import { ServiceError } from '../../../service-error.ts'
import type { PagePart } from '../../../words/page-in-words.ts'
import { reason } from '../../../words/services-words.ts'
import type { Placed, ScannedPage } from '../content/scanned-page.ts'
import { jpegInFile } from '../pixels/jpeg-in-file.ts'
import { libraryPicture } from '../pixels/library-picture.ts'
import { asColour, inBits, inBytes, type Pixels } from '../pixels/pixels.ts'
import { turned } from '../pixels/turned.ts'
import { StripFile } from './strip-file.ts'

export const pictureDamaged = (page: PagePart): ServiceError =>
  new ServiceError(reason('pdf.picture-damaged', page))

/**
 * Writes the scan that a page is into a file: its pixels as they are, turned as the page shows them.
 * @returns the path of the file: a JPEG where the scan is one and is not turned, else a TIFF
 * @throws ServiceError when the picture can't be decoded
 */
export async function takeScan(
  page: PDFPageProxy,
  scanned: ScannedPage,
  { path, named, folder }: { path: string; named: PagePart; folder: string },
): Promise<string> {
  const parts: { place: Placed; pixels: Pixels }[] = []
  for (const place of scanned.placed) {
    const decoded = await libraryPicture(page, place.picture)
    if (decoded === undefined) throw pictureDamaged(named)
    const jpeg = await jpegInFile(path, decoded.object, decoded.pixels)
    const { quarters, mirrored } = place.turn
    const upright = quarters === 0 && !mirrored
    if (jpeg !== undefined && upright && scanned.placed.length === 1) {
      const target = join(folder, 'page.jpg')
      await writeFile(target, jpeg.file, { flag: 'wx' })
      return target
    }
    const pixels = jpeg?.pixels ?? decoded.pixels
    parts.push({ place, pixels: upright ? pixels : await turnedAsItWas(pixels, place) })
  }
  const [only] = parts
  const pixels = parts.length === 1 && only !== undefined ? only.pixels : together(scanned, parts)
  const target = join(folder, 'page.tif')
  const file = await StripFile.create(target, pixels)
  try {
    await file.append(pixels.data)
    await file.finish()
  } finally {
    await file.close()
  }
  return target
}

async function turnedAsItWas(pixels: Pixels, { turn }: Placed): Promise<Pixels> {
  const done = await turned(inBytes(pixels), turn)
  return pixels.bits === 1 ? inBits(done) : done
}

/** Bands put together. */
function together(
  { width, height }: ScannedPage,
  parts: readonly { place: Placed; pixels: Pixels }[],
): Pixels {
  const samples = parts.some(({ pixels }) => pixels.samples === 3) ? 3 : 1
  const data = new Uint8Array(width * height * samples)
  for (const { place, pixels } of parts) {
    const bytes = inBytes(pixels)
    const { data: from } = samples === 3 ? asColour(bytes) : bytes
    const row = place.width * samples
    for (let y = 0; y < place.height; y++) {
      data.set(from.subarray(y * row, (y + 1) * row), ((place.top + y) * width + place.left) * samples)
    }
  }
  const whole: Pixels = { width, height, samples, bits: 8, data }
  return parts.every(({ pixels }) => pixels.bits === 1) ? inBits(whole) : whole
}
