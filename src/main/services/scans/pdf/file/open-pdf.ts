import { readFile, stat } from 'node:fs/promises'
import type { PDFDocumentProxy } from 'pdfjs-dist'
import { ServiceError } from '../../../service-error.ts'
import { reason } from '../../../words/services-words.ts'
import { scanLocked } from '../../file/scan-locked.ts'
import { pdfLibrary, safely } from './pdf-library.ts'

export interface GivenPdf {
  path: string
  /** What messages call it. */
  called: string
  password?: string
}

interface Opened extends GivenPdf {
  /** Of the file, to know it again. */
  stamp: string
  document: PDFDocumentProxy
}

/** The last one is kept open: pages of one file are read one after another. */
let last: Opened | undefined

/**
 * Opens a PDF.
 * @throws ScanLocked when it wants a password, or another one; ServiceError when it is damaged
 */
export async function openPdf(given: GivenPdf): Promise<PDFDocumentProxy> {
  const { path, password } = given
  const { size, mtimeMs, ino } = await stat(path)
  const stamp = `${ino}:${size}:${mtimeMs}`
  if (last?.path === path && last.stamp === stamp && last.password === password) return last.document
  const before = last
  last = undefined
  await before?.document.loadingTask.destroy().catch(() => undefined)
  const document = await load(given)
  last = { ...given, stamp, document }
  return document
}

async function load({ path, called, password }: GivenPdf): Promise<PDFDocumentProxy> {
  const { getDocument } = await pdfLibrary()
  const data = new Uint8Array(await readFile(path))
  const task = getDocument({ ...safely(), data, ...(password === undefined ? {} : { password }) })
  try {
    return await task.promise
  } catch (error) {
    await task.destroy().catch(() => undefined)
    if (error instanceof Error && error.name === 'PasswordException') {
      throw scanLocked(called, password !== undefined)
    }
    throw new ServiceError(reason('pdf.unsound', { scan: called }))
  }
}
