import type { PDFDocumentProxy, PDFPageProxy } from 'pdfjs-dist'
import type { Limits } from '../../../../contract/limits.ts'
import { ServiceError } from '../../service-error.ts'
import type { PagePart } from '../../words/page-in-words.ts'
import { reason } from '../../words/services-words.ts'
import type { DrawnFile } from '../page/drawn-file.ts'
import type { PageFound } from '../page/page-read.ts'
import { makeFile, makeSmall } from './draw/make-page-file.ts'
import { type GivenPdf, openPdf } from './file/open-pdf.ts'
import { readPdfPage } from './read-pdf-page.ts'

/** A PDF, opened to be read. Pages from 1. */
export interface PdfScan {
  pages: number
  read: (page: number, drawnAt?: number) => Promise<PageFound>
  /** A small picture, JPEG. */
  thumbnail: (page: number, side: number) => Promise<Uint8Array>
  /** Makes a file of a page, in a folder that is there. */
  draw: (page: number, folder: string, drawnAt?: number) => Promise<DrawnFile>
}

/**
 * Opens a PDF.
 * @throws ScanLocked when it wants a password, or another one; ServiceError when it is damaged
 */
export async function openPdfScan(given: GivenPdf & { limits: Limits }): Promise<PdfScan> {
  const document = await openPdf(given)
  const pages = document.numPages
  const around = { path: given.path, locked: await isLocked(document), pages, limits: given.limits }
  const named = (page: number): PagePart => ({ scan: given.called, page: pages > 1 ? page : null })
  const withPage = async <T>(number: number, work: (page: PDFPageProxy) => Promise<T>): Promise<T> => {
    let page: PDFPageProxy | undefined
    try {
      page = await document.getPage(number)
      return await work(page)
    } catch (error) {
      if (error instanceof ServiceError) throw error
      throw new ServiceError(reason('pdf.page-damaged', named(number)))
    } finally {
      page?.cleanup()
    }
  }
  return {
    pages,
    read: (number, drawnAt) =>
      withPage(number, (page) =>
        readPdfPage({ ...around, page, number, named: named(number) }, drawnAt),
      ).catch((error: unknown) => asFault(error, number, pages)),
    thumbnail: (number, side) => withPage(number, (page) => makeSmall(page, side)),
    draw: (number, folder, drawnAt) =>
      withPage(number, (page) => makeFile(page, { ...given, named: named(number), folder }, drawnAt)),
  }
}

/** Whether what stands in the file is locked, be it by a password that is not asked for. */
async function isLocked(document: PDFDocumentProxy): Promise<boolean> {
  const { info } = await document.getMetadata().catch(() => ({ info: {} }))
  return (info as Record<string, unknown>)['EncryptFilterName'] != null
}

function asFault(error: unknown, page: number, pages: number): PageFound {
  if (!(error instanceof ServiceError)) throw error
  return {
    format: 'pdf',
    pages,
    facts: { page, made: 'drawn', width: 1, height: 1 },
    fault: error.reason,
    remarks: [],
  }
}
