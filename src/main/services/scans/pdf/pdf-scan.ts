import type { PDFDocumentProxy, PDFPageProxy } from 'pdfjs-dist'
import type { Limits } from '../../../../contract/limits.ts'
import type { PageLook } from '../../../../contract/scan-look.ts'
import { ServiceError } from '../../service-error.ts'
import { oneDpi, type PageRead, unequalRemark } from '../page-read.ts'
import { tooManyPixels } from '../pixel-limit.ts'
import type { DrawnFile } from '../reader/reader-messages.ts'
import { drawPage, drawSmall } from './draw-page.ts'
import { isWhole } from './is-whole.ts'
import { libraryPicture } from './library-picture.ts'
import { type Matrix, matrixOf, SAME } from './matrix.ts'
import { type GivenPdf, openPdf } from './open-pdf.ts'
import { type PageContent, pageContent } from './page-content.ts'
import { finestPicture, type ScannedPage, scannedPage } from './scanned-page.ts'
import { pictureDamaged, takeScan } from './take-scan.ts'

/** A PDF, opened to be read. Pages from 1. */
export interface PdfScan {
  pages: number
  read: (page: number, drawnAt?: number) => Promise<PageRead>
  /** A small picture, JPEG. */
  thumbnail: (page: number, side: number) => Promise<Uint8Array>
  /** Makes a file of a page, in a folder that is there. */
  draw: (page: number, folder: string, drawnAt?: number) => Promise<DrawnFile>
}

const POINTS_PER_INCH = 72

/** Dots per inch of a page that has none of its own. Common practice, no source. */
const USUAL_DPI = 400

const FEWER = 'draw it with fewer dots to the inch'

/**
 * Opens a PDF.
 * @throws ScanLocked when it wants a password, or another one; ServiceError when it is damaged
 */
export async function openPdfScan(given: GivenPdf & { limits: Limits }): Promise<PdfScan> {
  const document = await openPdf(given)
  const pages = document.numPages
  const around = { path: given.path, locked: await isLocked(document), pages, limits: given.limits }
  const nameOf = (page: number): string => (pages > 1 ? `page ${page} of ${given.called}` : given.called)
  const withPage = async <T>(
    number: number,
    work: (page: PDFPageProxy, name: string) => Promise<T>,
  ): Promise<T> => {
    const name = nameOf(number)
    let page: PDFPageProxy | undefined
    try {
      page = await document.getPage(number)
      return await work(page, name)
    } catch (error) {
      if (error instanceof ServiceError) throw error
      throw new ServiceError(
        `${capital(name)} is damaged, so it can't be read: copy the file again, or save it anew.`,
      )
    } finally {
      page?.cleanup()
    }
  }
  return {
    pages,
    read: (number, drawnAt) =>
      withPage(number, (page, name) => readPage({ ...around, page, number, name }, drawnAt)).catch(
        (error: unknown) => asFault(error, number, pages),
      ),
    thumbnail: (number, side) => withPage(number, (page) => drawSmall(page, side)),
    draw: (number, folder, drawnAt) =>
      withPage(number, (page, name) => makeFile(page, { ...given, name, folder }, drawnAt)),
  }
}

/** Whether what stands in the file is locked, be it by a password that is not asked for. */
async function isLocked(document: PDFDocumentProxy): Promise<boolean> {
  const { info } = await document.getMetadata().catch(() => ({ info: {} }))
  return (info as Record<string, unknown>)['EncryptFilterName'] != null
}

const capital = (name: string): string =>
  name.startsWith('page ') ? `P${name.slice(1)}` : `The scan ${name}`

function asFault(error: unknown, page: number, pages: number): PageRead {
  if (!(error instanceof ServiceError)) throw error
  return {
    format: 'pdf',
    pages,
    facts: { page, made: 'drawn', width: 1, height: 1, fault: error.message },
    remarks: [],
  }
}

interface Paper {
  /** In 1/72 inch, turned as the page is shown. */
  width: number
  height: number
}

interface Seen {
  content: PageContent
  scanned: ScannedPage | undefined
  paper: Paper
}

async function see(page: PDFPageProxy): Promise<Seen> {
  const { width, height, transform } = page.getViewport({ scale: 1 })
  if (!(width > 0) || !(height > 0)) throw new RangeError('a page without size')
  const device: Matrix = matrixOf(transform) ?? SAME
  const content = await pageContent(page, device)
  return { content, scanned: scannedPage(content, { width, height }), paper: { width, height } }
}

/** Of a page that has many pictures, so many are decoded to see that they are whole. */
const PICTURES_TRIED = 64

interface ReadPage {
  path: string
  /** Whether the file is. */
  locked: boolean
  page: PDFPageProxy
  number: number
  name: string
  pages: number
  limits: Limits
}

async function readPage(of: ReadPage, drawnAt: number | undefined): Promise<PageRead> {
  const { page, number, name, pages, limits } = of
  mustBeAPage(page, name)
  const seen = await see(page)
  const { scanned, content } = seen
  if (content.empty) throw new ServiceError(`${capital(name)} is empty, so no sheet can be made of it.`)
  for (const picture of content.pictures.slice(0, PICTURES_TRIED)) {
    const decoded = await libraryPicture(page, picture)
    if (decoded === undefined || !(await isWhole(of.path, decoded.object, of.locked)))
      throw pictureDamaged(name)
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

function drawnFacts({ number, name, limits }: ReadPage, { content, paper }: Seen, wanted?: number): PageLook {
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

const pixelsAt = ({ width, height }: Paper, dpi: number): { width: number; height: number } => ({
  width: Math.max(1, Math.round((width * dpi) / POINTS_PER_INCH)),
  height: Math.max(1, Math.round((height * dpi) / POINTS_PER_INCH)),
})

async function makeFile(
  page: PDFPageProxy,
  { path, name, folder, limits }: GivenPdf & { name: string; folder: string; limits: Limits },
  drawnAt: number | undefined,
): Promise<DrawnFile> {
  const { scanned, paper } = await see(page)
  if (drawnAt === undefined) {
    if (scanned === undefined) {
      throw new ServiceError(
        `${capital(name)} is drawn and not scanned, and the job does not say at how many dots to the inch: ` +
          'bring it in as a new sheet.',
      )
    }
    mustBeFew(tooManyPixels(capital(name), scanned, limits))
    const { width, height } = scanned
    return { path: await takeScan(page, scanned, { path, name, folder }), width, height }
  }
  const size = pixelsAt(paper, drawnAt)
  mustBeFew(tooManyPixels(capital(name), size, limits, FEWER))
  return { path: await drawPage(page, { dpi: drawnAt, ...size }, folder), ...size }
}

function mustBeFew(fault: string | undefined): void {
  if (fault !== undefined) throw new ServiceError(fault)
}
