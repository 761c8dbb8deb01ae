import type { PDFPageProxy } from 'pdfjs-dist'
import type { Limits } from '../../../../contract/limits.ts'
import type { PageLook } from '../../../../contract/scan-look.ts'
import { ServiceError } from '../../service-error.ts'
import { oneDpi, unequalRemark } from '../page/density.ts'
import type { PageRead } from '../page/page-read.ts'
import { tooManyPixels } from '../page/pixel-limit.ts'
import { finestPicture } from './content/scanned-page.ts'
import { capital, FEWER, POINTS_PER_INCH, pixelsAt, type SeenPage, seePage } from './content/see-page.ts'
import { pictureDamaged } from './draw/take-scan.ts'
import { libraryPicture } from './pixels/library-picture.ts'
import { isWhole } from './whole/is-whole.ts'

/** Dots per inch of a page that has none of its own. Common practice, no source. */
const USUAL_DPI = 400

/** Of a page that has many pictures, so many are decoded to see that they are whole. */
const PICTURES_TRIED = 64

export interface ReadPage {
  path: string
  /** Whether the file is. */
  locked: boolean
  page: PDFPageProxy
  number: number
  name: string
  pages: number
  limits: Limits
}

/**
 * What a page is, with its pictures decoded to see that they are whole.
 * @param drawnAt dots per inch that it shall have when it is drawn
 * @throws ServiceError when it is empty or damaged
 */
export async function readPdfPage(of: ReadPage, drawnAt: number | undefined): Promise<PageRead> {
  const { page, number, name, pages, limits } = of
  mustBeAPage(page, name)
  const seen = await seePage(page)
  const { scanned, content } = seen
  if (content.empty) throw new ServiceError(`${capital(name)} is empty, so no sheet can be made of it.`)
  for (const picture of content.pictures.slice(0, PICTURES_TRIED)) {
    const decoded = await libraryPicture(page, picture)
    if (decoded === undefined || !(await isWhole(of.path, decoded, of.locked))) throw pictureDamaged(name)
  }
  if (scanned === undefined) {
    return { format: 'pdf', pages, facts: drawnFacts(of, seen, drawnAt), remarks: [] }
  }
  const { width, height, density } = scanned
  const fault = tooManyPixels(capital(name), scanned, limits)
  const facts: PageLook = {
    page: number,
    made: 'scanned',
    width,
    height,
    dpi: oneDpi(density),
    ...(fault === undefined ? {} : { fault }),
  }
  return { format: 'pdf', pages, facts, remarks: unequalRemark(capital(name), density) }
}

/** The largest page that there is, in its own units: ISO 32000-1, annex C.2. */
const LARGEST_PAGE = 14_400

function mustBeAPage({ view }: PDFPageProxy, name: string): void {
  const [left = 0, bottom = 0, right = 0, top = 0] = view
  if (right - left <= LARGEST_PAGE && top - bottom <= LARGEST_PAGE) return
  throw new ServiceError(
    `${capital(name)} says that it is larger than a page of a PDF can be, so it is damaged: save it anew.`,
  )
}

function drawnFacts(
  { number, name, limits }: ReadPage,
  { content, paper }: SeenPage,
  wanted?: number,
): PageLook {
  const inches = { width: paper.width / POINTS_PER_INCH, height: paper.height / POINTS_PER_INCH }
  const most = Math.floor(Math.sqrt(limits.pixels / (inches.width * inches.height)))
  const own = finestPicture(content.pictures, paper.width * paper.height)
  const drawnAt = wanted ?? Math.max(1, Math.min(own === undefined ? USUAL_DPI : Math.ceil(own), most))
  const size = pixelsAt(paper, drawnAt)
  const fault = tooManyPixels(capital(name), size, limits, FEWER)
  return {
    page: number,
    made: 'drawn',
    ...size,
    dpi: drawnAt,
    drawnAt,
    paper: inches,
    ...(fault === undefined ? {} : { fault }),
  }
}
