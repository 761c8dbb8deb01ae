import type { PixelSize } from '../../page/pixel-size.ts'
import { pictureLibrary } from '../../raster/open-raster.ts'

const SHORT = 3
const LONG = 4
const HEADER = 8
const GROUP_4 = 4
const ENTRY = 12

/**
 * Whether a picture coded by CCITT Group 4 has all its rows. The library of PDF paints what is missing white and says
 * nothing; that of TIFF, whose strips are coded alike, tells.
 * @param coded as it stands in the file: `K` below 0, and rows that do not begin at whole bytes
 * @param size pixels that it must have
 * Source: ISO 32000-1, 7.4.6; ITU-T T.6; TIFF 6.0, sections 2 and 11.
 */
export async function faxIsWhole(coded: Buffer, size: PixelSize): Promise<boolean> {
  const sharp = await pictureLibrary()
  try {
    const picture = sharp(asTiff(coded, size), {
      failOn: 'warning',
      limitInputPixels: false,
      sequentialRead: true,
    })
    await picture.resize(16, 16, { fit: 'fill' }).raw().toBuffer()
    return true
  } catch {
    return false
  }
}

/** The coded rows as the only strip of a TIFF file. */
function asTiff(coded: Buffer, { width, height }: PixelSize): Buffer {
  const entries: readonly (readonly [tag: number, type: number, value: number])[] = [
    [256, LONG, width],
    [257, LONG, height],
    [258, SHORT, 1],
    [259, SHORT, GROUP_4],
    // White is zero, as the codes have it; nobody looks at the picture.
    [262, SHORT, 0],
    [273, LONG, HEADER],
    [277, SHORT, 1],
    [278, LONG, height],
    [279, LONG, coded.length],
  ]
  const padded = coded.length + (coded.length % 2)
  const file = Buffer.alloc(HEADER + padded + 2 + entries.length * ENTRY + 4)
  file.write('II*\0', 'latin1')
  file.writeUInt32LE(HEADER + padded, 4)
  coded.copy(file, HEADER)
  file.writeUInt16LE(entries.length, HEADER + padded)
  for (const [i, [tag, type, value]] of entries.entries()) {
    const at = HEADER + padded + 2 + i * ENTRY
    file.writeUInt16LE(tag, at)
    file.writeUInt16LE(type, at + 2)
    file.writeUInt32LE(1, at + 4)
    file.writeUInt32LE(value, at + 8)
  }
  return file
}
