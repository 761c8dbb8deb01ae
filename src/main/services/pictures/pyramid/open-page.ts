import type { Sharp } from 'sharp'
import type { PixelSize } from '../../scans/page/pixel-size.ts'
import { reason } from '../../words/services-words.ts'
import { PyramidError } from '../faults/pyramid-error.ts'
import { tileKind } from '../layout/tile-format.ts'
import type { TileKind } from '../layout/tile-kind.ts'

/** Paper, behind whatever a scan leaves transparent. */
export const PAPER = '#ffffff'

/** A page in a file that can be read. page: from 1 */
export interface PageInFile {
  path: string
  page: number
}

async function read({ path, page }: PageInFile, ignoreIcc: boolean): Promise<Sharp> {
  const { default: sharp } = await import('sharp')
  return sharp(path, {
    failOn: 'error',
    sequentialRead: true,
    limitInputPixels: false,
    page: page - 1,
    ignoreIcc,
  })
}

/**
 * How the tiles of a page are to be kept, and its pixels as they are stored; reads the head of the file only.
 * @throws PyramidError
 */
export async function lookAtPage(
  file: PageInFile,
): Promise<{ kind: TileKind; size: PixelSize; tool: string }> {
  try {
    const metadata = await (await read(file, true)).metadata()
    const { width, height } = metadata
    return { kind: tileKind(metadata), size: { width, height }, tool: await tool() }
  } catch {
    throw new PyramidError(reason('pyramid.unreadable'))
  }
}

/** The libraries that make pictures. */
async function tool(): Promise<string> {
  const { versions } = (await import('sharp')).default
  return `sharp ${versions.sharp ?? '?'}, libvips ${versions.vips}`
}

/**
 * A page of a scan, to be made pictures of: its pixels as they are stored (a camera's turn flag is not applied), read
 * from top to bottom, in 8 bits. Grey keeps its values as they are, whatever its profile says; colour comes in sRGB, by
 * its profile where it has one, on white.
 */
export async function openPage(file: PageInFile, { type }: TileKind): Promise<Sharp> {
  const grey = type === 'png'
  const picture = await read(file, grey)
  // Sixteen bits are brought down to eight by leaving off the lower ones: the library's way to grey would round twice.
  return grey ? picture.extractChannel(0) : picture.flatten({ background: PAPER }).toColourspace('srgb')
}
