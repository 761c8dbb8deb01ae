import type { Metadata } from 'sharp'
import type { Limits } from '../../../../contract/limits.ts'
import { ServiceError } from '../../service-error.ts'
import type { PagePart } from '../../words/page-in-words.ts'
import { reason, type ServiceReason } from '../../words/services-words.ts'
import type { ScanFormat } from '../file/scan-format.ts'
import { oneDpi, unequalRemark } from '../page/density.ts'
import type { PageFound, PageRead } from '../page/page-read.ts'
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
  read: (page: number) => Promise<PageFound>
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
      const named = { scan: called, page: pages > 1 ? page : null }
      const head = page === 1 ? first : await headOf(path, page)
      const directory = directories[page - 1]
      if (head === undefined) return faulty(given, own, page, whyNot(named, directory))
      const read = await readHead({ ...given, named, pages: own, page, head, directory })
      return leftOut.has(page) ? withRemark(read, named, directory) : read
    },
  }
}

/** Pages that are parts of others, as the file says; where it says so of all of them, each is taken for itself. */
function notOfTheirOwn(directories: readonly TiffDirectory[], pages: number): ReadonlySet<number> {
  const parts = directories.flatMap(({ partOf }, i) => (partOf === undefined ? [] : [i + 1]))
  return new Set(parts.length < pages ? parts : [])
}

const withRemark = (read: PageFound, page: PagePart, directory: TiffDirectory | undefined): PageFound => ({
  ...read,
  remarks: [...read.remarks, reason('page.part-of-another', { ...page, part: directory?.partOf ?? 'part' })],
})

interface ReadPage extends Given {
  named: PagePart
  pages: number
  page: number
  head: Metadata
  directory: TiffDirectory | undefined
}

async function readHead(of: ReadPage): Promise<PageFound> {
  const { path, format, named, pages, page, head, directory, limits } = of
  const { width, height } = head
  const density = format === 'tiff' ? directory?.density : await statedDensity(path, format, head)
  const orientation = directory?.orientation ?? head.orientation
  const fault = readFault(of) ?? tooManyPixels(named, head, limits)
  const facts: PageRead['facts'] = {
    page,
    made: 'scanned',
    width,
    height,
    ...(density === undefined ? {} : { dpi: oneDpi(density) }),
    ...(isTurned(orientation) ? { orientation } : {}),
  }
  return { format, pages, facts, fault, remarks: density === undefined ? [] : unequalRemark(named, density) }
}

const isTurned = (orientation: number | undefined): orientation is number =>
  orientation !== undefined && orientation >= 2 && orientation <= 8

function readFault({ named, directory }: ReadPage): ServiceReason | undefined {
  if (directory?.cutShort === true) return unreadable(named.scan)
  if (directory === undefined || !directory.planesApart || !directory.tiled || directory.samples < 2)
    return undefined
  return reason('raster.planes-in-tiles', named)
}

function whyNot(page: PagePart, directory: TiffDirectory | undefined): ServiceReason {
  return directory?.compression === OLD_JPEG ? reason('raster.old-jpeg', page) : unreadable(page.scan)
}

const unreadable = (scan: string): ServiceReason => reason('raster.truncated', { scan })

function faulty({ format }: Given, pages: number, page: number, fault: ServiceReason): PageFound {
  return { format, pages, facts: { page, made: 'scanned', width: 1, height: 1 }, fault, remarks: [] }
}
