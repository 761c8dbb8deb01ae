import type { PDFPageProxy } from 'pdfjs-dist'
import type { Limits } from '../../../../../contract/limits.ts'
import { ServiceError } from '../../../service-error.ts'
import type { PagePart } from '../../../words/page-in-words.ts'
import { reason, type ServiceReason } from '../../../words/services-words.ts'
import type { DrawnFile } from '../../page/drawn-file.ts'
import { tooManyPixels } from '../../page/pixel-limit.ts'
import { pixelsAt, seePage } from '../content/see-page.ts'
import type { GivenPdf } from '../file/open-pdf.ts'
import { drawPage, drawSmall } from './draw-page.ts'
import { smallScan } from './small-scan.ts'
import { takeScan } from './take-scan.ts'

/** A small picture of a page, JPEG. @param side its longer side at most, pixels */
export async function makeSmall(page: PDFPageProxy, side: number): Promise<Uint8Array> {
  const { scanned } = await seePage(page)
  const [only, ...more] = scanned?.placed ?? []
  const small = only === undefined || more.length > 0 ? undefined : await smallScan(page, only, side)
  return small ?? drawSmall(page, side)
}

/**
 * Makes a file of a page: of its scan, or drawn at so many dots per inch.
 * @throws ServiceError with a sentence when it can't be made
 */
export async function makeFile(
  page: PDFPageProxy,
  { path, named, folder, limits }: GivenPdf & { named: PagePart; folder: string; limits: Limits },
  drawnAt: number | undefined,
): Promise<DrawnFile> {
  const { scanned, paper } = await seePage(page)
  if (drawnAt === undefined) {
    if (scanned === undefined) {
      throw new ServiceError(reason('pdf.drawn-at-nothing', named))
    }
    mustBeFew(tooManyPixels(named, scanned, limits))
    const { width, height } = scanned
    return { path: await takeScan(page, scanned, { path, named, folder }), width, height }
  }
  const size = pixelsAt(paper, drawnAt)
  mustBeFew(tooManyPixels(named, size, limits, 'draw'))
  return { path: await drawPage(page, { dpi: drawnAt, ...size }, folder), ...size }
}

function mustBeFew(fault: ServiceReason | undefined): void {
  if (fault !== undefined) throw new ServiceError(fault)
}
