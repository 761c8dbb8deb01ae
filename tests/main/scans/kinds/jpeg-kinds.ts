import { colourDrawing, greyDrawing } from './drawing.ts'
import { type JpegOptions, jpegFile, webpFile } from './jpeg/jpeg-file.ts'
import { type JpegHead, withHead } from './jpeg/segments.ts'
import type { Picture } from './picture.ts'
import { readPicture } from './read-picture.ts'
import type { PageTruth, ScanKind } from './scan-kind.ts'

const grey = greyDrawing()
const colour = colourDrawing()

/** A JPEG file and what sharp decodes of it: the reference for its samples. */
function kind(
  name: string,
  given: Picture,
  head: JpegHead,
  says: Partial<PageTruth>,
  options?: JpegOptions,
): ScanKind {
  return {
    name: `JPEG, ${name}`,
    file: `${name}.jpg`,
    format: 'jpeg',
    make: async () => {
      const bytes = withHead(await jpegFile(given, options), head)
      const seen = await readPicture(bytes)
      const { width, height } = given
      return { bytes, pages: [{ width, height, made: 'scanned', picture: seen, ...says }] }
    },
  }
}

const at300: JpegHead = { jfifDpi: [300, 300] }

const orientations: ScanKind[] = [1, 2, 3, 4, 5, 6, 7, 8].map((orientation) =>
  kind(
    `Exif orientation ${orientation}`,
    grey,
    { ...at300, exif: { orientation, order: orientation % 2 === 0 ? 'II' : 'MM' } },
    { dpi: 300, ...(orientation === 1 ? {} : { orientation }) },
  ),
)

const webp = (name: string, lossless: boolean): ScanKind => ({
  name: `WebP, ${name}`,
  file: `${name}.webp`,
  format: 'webp',
  make: async () => {
    const bytes = await webpFile(colour, lossless)
    const seen = lossless ? colour : await readPicture(bytes)
    return { bytes, pages: [{ width: colour.width, height: colour.height, made: 'scanned', picture: seen }] }
  },
})

export const JPEG_KINDS: readonly ScanKind[] = [
  kind('baseline grey', grey, at300, { dpi: 300 }),
  kind('baseline colour', colour, at300, { dpi: 300 }),
  kind('baseline, halved colour', colour, at300, { dpi: 300 }, { halved: true }),
  kind('progressive grey', grey, at300, { dpi: 300 }, { progressive: true }),
  kind('progressive colour', colour, at300, { dpi: 300 }, { progressive: true }),
  kind('Exif dpi', grey, { exif: { dpi: 400 } }, { dpi: 400 }),
  kind('no resolution', grey, {}, {}),
  ...orientations,
]

export const WEBP_KINDS: readonly ScanKind[] = [webp('lossy', false), webp('lossless', true)]
