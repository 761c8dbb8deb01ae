import type { PixelSize } from '../../page/pixel-size.ts'
import { pictureLibrary } from '../../raster/open-raster.ts'
import { TAG } from '../../tiff/fields.ts'
import { HEADER, tiffDirectory, tiffHeader, type WrittenField } from '../../tiff/write-directory.ts'

const GROUP_4 = 4

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
  const at = HEADER + coded.length + (coded.length % 2)
  const fields: readonly WrittenField[] = [
    { tag: TAG.width, type: 'long', values: [width] },
    { tag: TAG.height, type: 'long', values: [height] },
    { tag: TAG.bits, type: 'short', values: [1] },
    { tag: TAG.compression, type: 'short', values: [GROUP_4] },
    // White is zero, as the codes have it; nobody looks at the picture.
    { tag: TAG.photometric, type: 'short', values: [0] },
    { tag: TAG.stripOffsets, type: 'long', values: [HEADER] },
    { tag: TAG.samples, type: 'short', values: [1] },
    { tag: TAG.rowsPerStrip, type: 'long', values: [height] },
    { tag: TAG.stripBytes, type: 'long', values: [coded.length] },
  ]
  return Buffer.concat([tiffHeader(at), coded, Buffer.alloc(coded.length % 2), tiffDirectory(fields, at)])
}
