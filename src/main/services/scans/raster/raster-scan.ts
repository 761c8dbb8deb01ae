import type { Metadata } from 'sharp'
import type { Limits } from '../../../../contract/limits.ts'
import type { PageLook } from '../../../../contract/scan-look.ts'
import { ServiceError } from '../../service-error.ts'
import type { ScanFormat } from '../file/scan-format.ts'
import { oneDpi, unequalRemark } from '../page/density.ts'
import type { PageRead } from '../page/page-read.ts'
import { tooManyPixels } from '../page/pixel-limit.ts'
import { type TiffDirectory, tiffDirectories } from '../tiff/tiff-directories.ts'
import { headOf } from './open-raster.ts'
import { statedDensity } from './stated-density.ts'

/** Compression 6 of TIFF 6.0, which its own authors withdrew in Technical Note 2 of 1995. */
const OLD_JPEG = 6

/** A scan whose pages are pictures, opened to be looked at. */
export interface RasterScan {
  format: ScanFormat
  /** In the file. */
  pages: number
  /** Those that are no sheets of their own. */
  leftOut: ReadonlySet<number>
  read: (page: number) => Promise<PageRead>
}

interface Given {
  path: string
  called: string
  format: ScanFormat
  limits: Limits
}

/**
 * Opens a scan whose pages are pictures; no pixel is decoded.
 * @throws ServiceError when it is damaged
 */
export async function openRasterScan(given: Given): Promise<RasterScan> {
  const { path, called, format, limits } = given
  const directories = format === 'tiff' ? await tiffDirectories(path, limits.pages) : []
  const first = await headOf(path, 1)
  const pages = Math.max(1, first?.pages ?? directories.length)
  if (first === undefined && directories.length === 0) throw new ServiceError(unreadable(called))
  if (first !== undefined && first.format !== format) throw new ServiceError(unreadable(called))
  const leftOut = notOfTheirOwn(directories, pages)
  const own = pages - leftOut.size
  return {
    format,
    pages,
    leftOut,
    read: async (page) => {
      const name = pages > 1 ? `Page ${page} of ${called}` : `The scan ${called}`
      const head = page === 1 ? first : await headOf(path, page)
      const directory = directories[page - 1]
      if (head === undefined) return faulty(given, own, page, whyNot(called, name, directory))
      const read = await readHead({ ...given, name, pages: own, page, head, directory })
      return leftOut.has(page) ? withRemark(read, name, directory) : read
    },
  }
}

/** Pages that are parts of others, as the file says; where it says so of all of them, each is taken for itself. */
function notOfTheirOwn(directories: readonly TiffDirectory[], pages: number): ReadonlySet<number> {
  const parts = directories.flatMap(({ partOf }, i) => (partOf === undefined ? [] : [i + 1]))
  return new Set(parts.length < pages ? parts : [])
}

const withRemark = (read: PageRead, name: string, directory: TiffDirectory | undefined): PageRead => ({
  ...read,
  remarks: [
    ...read.remarks,
    `${name} is, as the file says, a ${directory?.partOf ?? 'part'} of another page: bring that one in, unless this ` +
      'one is meant.',
  ],
})

interface ReadPage extends Given {
  name: string
  pages: number
  page: number
  head: Metadata
  directory: TiffDirectory | undefined
}

async function readHead(of: ReadPage): Promise<PageRead> {
  const { path, format, name, pages, page, head, directory, limits } = of
  const { width, height } = head
  const density = format === 'tiff' ? directory?.density : await statedDensity(path, format, head)
  const orientation = directory?.orientation ?? head.orientation
  const fault = readFault(of) ?? tooManyPixels(name, head, limits)
  const facts: PageLook = {
    page,
    made: 'scanned',
    width,
    height,
    ...(density === undefined ? {} : { dpi: oneDpi(density) }),
    ...(isTurned(orientation) ? { orientation } : {}),
    ...(fault === undefined ? {} : { fault }),
  }
  return { format, pages, facts, remarks: density === undefined ? [] : unequalRemark(name, density) }
}

const isTurned = (orientation: number | undefined): orientation is number =>
  orientation !== undefined && orientation >= 2 && orientation <= 8

function readFault({ called, name, directory }: ReadPage): string | undefined {
  if (directory?.cutShort === true) return unreadable(called)
  if (directory === undefined || !directory.planesApart || !directory.tiled || directory.samples < 2)
    return undefined
  return (
    `${name} holds its colours in planes apart, in tiles, which can't be read: ` +
    'save it with the colours of each pixel together.'
  )
}

function whyNot(called: string, name: string, directory: TiffDirectory | undefined): string {
  if (directory?.compression !== OLD_JPEG) return unreadable(called)
  return `${name} is compressed by the old kind of JPEG in TIFF, which can't be read: save it with another compression.`
}

const unreadable = (called: string): string =>
  `The scan ${called} is truncated or damaged, so it can't be read: copy or scan it again.`

function faulty({ format }: Given, pages: number, page: number, fault: string): PageRead {
  return { format, pages, facts: { page, made: 'scanned', width: 1, height: 1, fault }, remarks: [] }
}
