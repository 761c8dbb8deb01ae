import type { PDFPageProxy } from 'pdfjs-dist'
import type { PaintedPicture } from '../content/page-content.ts'
import { asGrey, onPaper, type Pixels, rowBytes } from './pixels.ts'

/** A picture as the library decoded it. */
export interface LibraryPicture {
  pixels: Pixels
  /** The object of the file that it is, e.g. `12R`; undefined for one that stands in the page itself. */
  object: string | undefined
}

/** The library's own kinds of pixels. */
const BITS = 1
const RGB = 2
const RGBA = 3

/** The pixels of a picture on a page; undefined when it could not be decoded whole. */
export async function libraryPicture(
  page: PDFPageProxy,
  { id, stencil, width, height }: PaintedPicture,
): Promise<LibraryPicture | undefined> {
  const objects = id.startsWith('g_') ? page.commonObjs : page.objs
  const found = await new Promise<unknown>((resolve) => void objects.get(id, resolve))
  if (typeof found !== 'object' || found === null) return undefined
  const { data, kind, ref, ...size } = found as Record<string, unknown>
  if (!(data instanceof Uint8Array || data instanceof Uint8ClampedArray)) return undefined
  if (size['width'] !== width || size['height'] !== height) return undefined
  const bytes = new Uint8Array(data.buffer, data.byteOffset, data.length)
  const pixels = pixelsOf(bytes, stencil ? BITS : kind, width, height)
  if (pixels === undefined || pixels.data.length < rowBytes(pixels) * height) return undefined
  return { pixels, object: typeof ref === 'string' ? ref : undefined }
}

function pixelsOf(data: Uint8Array, kind: unknown, width: number, height: number): Pixels | undefined {
  if (kind === BITS) return { width, height, samples: 1, bits: 1, data }
  if (kind === RGB) return asGrey({ width, height, samples: 3, bits: 8, data })
  return kind === RGBA ? asGrey(onPaper(data, width, height)) : undefined
}
