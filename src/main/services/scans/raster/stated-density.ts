import { open } from 'node:fs/promises'
import type { Metadata } from 'sharp'
import type { ScanFormat } from '../file/scan-format.ts'
import type { Density } from '../page/density.ts'
import { exifDensity, jpegDensity } from './jpeg-density.ts'
import { pngDensity } from './png-density.ts'

/** What says the resolution stands at the beginning; enough for it and a profile before it. */
const HEAD_BYTES = 1024 * 1024

/** The resolution that a file of one page states; undefined when it states none. TIFF says it in its directories. */
export async function statedDensity(
  path: string,
  format: ScanFormat,
  { exif }: Pick<Metadata, 'exif'>,
): Promise<Density | undefined> {
  if (format === 'webp') {
    if (exif === undefined) return undefined
    return exifDensity(exif.toString('latin1', 0, 6) === 'Exif\0\0' ? exif.subarray(6) : exif)
  }
  const head = await beginningOf(path)
  return format === 'jpeg' ? jpegDensity(head) : format === 'png' ? pngDensity(head) : undefined
}

async function beginningOf(path: string): Promise<Buffer> {
  const file = await open(path)
  try {
    const { buffer, bytesRead } = await file.read(Buffer.alloc(HEAD_BYTES), 0, HEAD_BYTES, 0)
    return buffer.subarray(0, bytesRead)
  } finally {
    await file.close()
  }
}
