import type { PDFPageProxy } from 'pdfjs-dist'
import { matrixOf, type PdfMatrix, SAME } from './matrix.ts'
import { type PageContent, pageContent } from './page-content.ts'
import { type ScannedPage, scannedPage } from './scanned-page.ts'

export const POINTS_PER_INCH = 72

export interface PaperSize {
  /** In 1/72 inch, turned as the page is shown. */
  width: number
  height: number
}

/** What is on a page. */
export interface SeenPage {
  content: PageContent
  scanned: ScannedPage | undefined
  paper: PaperSize
}

/** @throws RangeError when it has no size */
export async function seePage(page: PDFPageProxy): Promise<SeenPage> {
  const { width, height, transform } = page.getViewport({ scale: 1 })
  if (!(width > 0) || !(height > 0)) throw new RangeError('a page without size')
  const device: PdfMatrix = matrixOf(transform) ?? SAME
  const content = await pageContent(page, device)
  return { content, scanned: scannedPage(content, { width, height }), paper: { width, height } }
}

/** Pixels of a page that is drawn at so many dots per inch. */
export const pixelsAt = ({ width, height }: PaperSize, dpi: number): { width: number; height: number } => ({
  width: Math.max(1, Math.round((width * dpi) / POINTS_PER_INCH)),
  height: Math.max(1, Math.round((height * dpi) / POINTS_PER_INCH)),
})
