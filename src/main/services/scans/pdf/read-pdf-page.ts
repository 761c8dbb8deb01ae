import type { PDFPageProxy } from 'pdfjs-dist'
import type { Limits } from '../../../../contract/limits.ts'
import { ServiceError } from '../../service-error.ts'
import type { PagePart } from '../../words/page-in-words.ts'
import { reason } from '../../words/services-words.ts'
import { oneDpi, unequalRemark } from '../page/density.ts'
import type { PageFound, PageRead } from '../page/page-read.ts'
import { tooManyPixels } from '../page/pixel-limit.ts'
import { finestPicture } from './content/scanned-page.ts'
import { POINTS_PER_INCH, pixelsAt, type SeenPage, seePage } from './content/see-page.ts'
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
  named: PagePart
  pages: number
  limits: Limits
}

/**
 * What a page is, with its pictures decoded to see that they are whole.
 * @param drawnAt dots per inch that it shall have when it is drawn
 * @throws ServiceError when it is empty or damaged
 */
export async function readPdfPage(of: ReadPage, drawnAt: number | undefined): Promise<PageFound> {
  const { page, number, named, pages, limits } = of
  mustBeAPage(page, named)
  const seen = await seePage(page)
  const { scanned, content } = seen
  if (content.empty) throw new ServiceError(reason('pdf.page-empty', named))
  for (const picture of content.pictures.slice(0, PICTURES_TRIED)) {
    const decoded = await libraryPicture(page, picture)
    if (decoded === undefined || !(await isWhole(of.path, decoded, of.locked))) throw pictureDamaged(named)
  }
  if (scanned === undefined) {
    return { format: 'pdf', pages, ...drawnFacts(of, seen, drawnAt), remarks: [] }
  }
  const { width, height, density } = scanned
  const fault = tooManyPixels(named, scanned, limits)
  const facts: PageRead['facts'] = {
    page: number,
    made: 'scanned',
    width,
    height,
    dpi: oneDpi(density),
  }
  return { format: 'pdf', pages, facts, fault, remarks: unequalRemark(named, density) }
}

/** The largest page that there is, in its own units: ISO 32000-1, annex C.2. */
const LARGEST_PAGE = 14_400

function mustBeAPage({ view }: PDFPageProxy, named: PagePart): void {
  const [left = 0, bottom = 0, right = 0, top = 0] = view
  if (right - left <= LARGEST_PAGE && top - bottom <= LARGEST_PAGE) return
  throw new ServiceError(reason('pdf.page-larger-than-any', named))
}

function drawnFacts(
  { number, named, limits }: ReadPage,
  { content, paper }: SeenPage,
  wanted?: number,
): Pick<PageFound, 'facts' | 'fault'> {
  const inches = { width: paper.width / POINTS_PER_INCH, height: paper.height / POINTS_PER_INCH }
  const most = Math.floor(Math.sqrt(limits.pixels / (inches.width * inches.height)))
  const own = finestPicture(content.pictures, paper.width * paper.height)
  const drawnAt = wanted ?? Math.max(1, Math.min(own === undefined ? USUAL_DPI : Math.ceil(own), most))
  const size = pixelsAt(paper, drawnAt)
  const fault = tooManyPixels(named, size, limits, 'draw')
  const facts = { page: number, made: 'drawn' as const, ...size, dpi: drawnAt, drawnAt, paper: inches }
  return { facts, fault }
}
