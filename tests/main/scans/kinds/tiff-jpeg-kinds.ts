import { colourDrawing, greyDrawing } from './drawing.ts'
import { jpegFile } from './jpeg/jpeg-file.ts'
import { type Picture, picture, pixelAt } from './picture.ts'
import { readPicture } from './read-picture.ts'
import type { ScanKind } from './scan-kind.ts'
import { partsOf, type TiffPage, tiffFile } from './tiff/tiff-file.ts'

/** The decoded parts of a page laid out again as they lie on it. */
function laidOut(
  whole: Picture,
  parts: readonly Picture[],
  { tile, rows = whole.height }: TiffPage,
): Picture {
  const [across, down] = tile ?? [whole.width, rows]
  const perRow = Math.ceil(whole.width / across)
  return picture(whole, (x, y) => {
    const part = parts[Math.floor(y / down) * perRow + Math.floor(x / across)]
    return part === undefined ? [] : pixelAt(part, x % across, y % down)
  })
}

/** Each strip or tile is a JPEG stream with its own tables. Source: TIFF technical note 2, draft of 1995. */
function kind(name: string, page: TiffPage): ScanKind {
  const whole: TiffPage = { ...page, compression: 'jpeg', resolution: { x: 300, y: 300, unit: 'inch' } }
  return {
    name: `TIFF, JPEG, ${name}`,
    file: `jpeg ${name}.tif`,
    format: 'tiff',
    make: async () => {
      const streams = await Promise.all(partsOf(whole).map((part) => jpegFile(part)))
      const parts = await Promise.all(streams.map((stream) => readPicture(stream)))
      const { width, height } = page.picture
      const seen = laidOut(page.picture, parts, whole)
      return {
        bytes: tiffFile([{ ...whole, streams }]),
        pages: [{ width, height, dpi: 300, made: 'scanned', picture: seen }],
      }
    },
  }
}

const grey = greyDrawing()
const colour = colourDrawing()

export const TIFF_JPEG_KINDS: readonly ScanKind[] = [
  kind('grey, strips', { picture: grey, photometric: 'black is zero', rows: 16 }),
  kind('grey, tiles', { picture: grey, photometric: 'black is zero', tile: [32, 32] }),
  kind('colours, strips', { picture: colour, photometric: 'ycbcr', rows: 16 }),
  kind('colours, tiles', { picture: colour, photometric: 'ycbcr', tile: [32, 32] }),
]
