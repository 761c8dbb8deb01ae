import { open, stat } from 'node:fs/promises'
import { systemReason } from '../files/system-reason.ts'
import { ServiceError } from '../service-error.ts'
import { jpegStatesDensity } from './jpeg-density.ts'

/** What a scan file says about itself. Pixels are those stored in the file; nothing is turned or resampled. */
export interface ScanFacts {
  format: 'png' | 'jpeg' | 'webp' | 'tiff'
  /** Pixels of the page, as stored: a camera's turn flag is reported, not applied. */
  width: number
  height: number
  /** Pixels per inch, where the file says so. */
  dpi?: number
  pages: number
  /** Exif Orientation 2 to 8 when the file asks to be shown turned or mirrored. */
  orientation?: number
}

const FORMATS = ['png', 'jpeg', 'webp', 'tiff'] as const
const READABLE = 'PNG, JPEG, TIFF or WebP'

/**
 * Reads the size of a scan, without decoding its pixels.
 * @param name what messages call the file, when it is a copy under another name
 * @param page whose size is read, from 1; the file must have it
 * @throws ServiceError when the file is missing, empty or not a picture of a kind that is read.
 */
export async function inspectScan(path: string, name: string = path, page = 1): Promise<ScanFacts> {
  try {
    const entry = await stat(path)
    if (!entry.isFile()) throw new ServiceError(`"${name}" is not a file: name the scan itself.`)
    if (entry.size === 0) throw new ServiceError(`The scan ${name} is empty: scan or copy it again.`)
  } catch (error) {
    if (error instanceof ServiceError) throw error
    throw new ServiceError(`The scan ${name} can't be read because ${systemReason(error)}.`)
  }
  // Loaded here and not above: it is the slowest part to load, and most commands look at no picture.
  const { default: sharp } = await import('sharp')
  let metadata: Awaited<ReturnType<ReturnType<typeof sharp>['metadata']>>
  try {
    metadata = await sharp(path, { limitInputPixels: false, page: page - 1 }).metadata()
  } catch {
    throw new ServiceError(`The scan ${name} is not a picture that can be read: give a ${READABLE} file.`)
  }
  const format = FORMATS.find((known) => known === metadata.format)
  if (format === undefined) {
    throw new ServiceError(`The scan ${name} is of the kind ${metadata.format}: convert it to ${READABLE}.`)
  }
  const { width, height, pages, orientation } = metadata
  const density = format === 'jpeg' && !(await statesDensity(path)) ? undefined : metadata.density
  return {
    format,
    width,
    height,
    ...(density === undefined || density <= 0 ? {} : { dpi: density }),
    pages: pages ?? 1,
    ...(orientation === undefined || orientation === 1 ? {} : { orientation }),
  }
}

/** Application segments stand at the beginning; those that matter within the first of them. */
const HEAD_BYTES = 256 * 1024

async function statesDensity(path: string): Promise<boolean> {
  const file = await open(path)
  try {
    const { buffer, bytesRead } = await file.read(Buffer.alloc(HEAD_BYTES), 0, HEAD_BYTES, 0)
    return jpegStatesDensity(buffer.subarray(0, bytesRead))
  } finally {
    await file.close()
  }
}
