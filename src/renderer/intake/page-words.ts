import type { PageLook, ScanLook } from '../../contract/scan-look.ts'
import { reason, type WindowReason } from '../words/window-words.ts'
import { rangesOf } from './page-ranges.ts'

/** Whether nothing is to be chosen or told of: one page that was scanned and that a sheet can be made of. */
export function isPlain({ locked, pages, leftOut = [], looked }: ScanLook): boolean {
  const [only] = looked
  return !locked && pages - leftOut.length === 1 && only?.made === 'scanned' && only.fault === undefined
}

/** What is said of pages that are no sheets of their own. */
export const leftOutInWords = (pages: readonly number[]): string =>
  pages.length === 1
    ? `Page ${pages[0]} is not offered: the file says that it is a reduced copy of another page, or a mask.`
    : `Pages ${rangesOf(pages)} are not offered: the file says that they are reduced copies of other pages, or masks.`

const inches = (size: number): string => String(Number(size.toFixed(2)))

/** What a page is, in a few words for each line. */
export function pageLines({ made, width, height, dpi, paper }: PageLook): string[] {
  if (made === 'drawn') {
    return [
      'Drawn, not scanned',
      ...(paper === undefined ? [] : [`${inches(paper.width)} × ${inches(paper.height)} in`]),
    ]
  }
  return [
    `${width} × ${height} px`,
    dpi === undefined ? 'No dpi in the file' : `${Number(dpi.toFixed(2))} dpi`,
  ]
}

/** The dpi that the file itself gives its scanned pages. */
export function dpiInFile(looked: readonly PageLook[]): string {
  const said = new Set(looked.filter(({ made }) => made === 'scanned').map(({ dpi }) => dpi))
  const [only] = said
  if (said.size > 1) return 'differs by page'
  return only === undefined ? 'not in the file' : `${Number(only.toFixed(2))} in the file`
}

/** Pixels of a drawn page at so many dots per inch. */
export function drawnSize(
  { paper, width, height, drawnAt }: PageLook,
  dpi: number,
): { width: number; height: number } {
  if (paper !== undefined) {
    return { width: Math.round(paper.width * dpi), height: Math.round(paper.height * dpi) }
  }
  const factor = drawnAt === undefined ? 1 : dpi / drawnAt
  return { width: Math.round(width * factor), height: Math.round(height * factor) }
}

/**
 * What drawn pages come to at so many dots per inch, by the largest of them, and what is wrong with that.
 * @param limit pixels of a page; null while it is not known
 */
export function drawnAtDpi(
  pages: readonly PageLook[],
  dpi: number,
  limit: number | null,
): { size: WindowReason | null; problem: WindowReason | null } {
  if (!Number.isFinite(dpi) || dpi <= 0)
    return { size: null, problem: reason('written.no-dpi', { example: 400 }) }
  const sizes = pages.map((page) => ({ page: page.page, ...drawnSize(page, dpi) }))
  const largest = sizes.reduce<(typeof sizes)[number] | undefined>(
    (best, one) => (best === undefined || one.width * one.height > best.width * best.height ? one : best),
    undefined,
  )
  if (largest === undefined) return { size: null, problem: null }
  const size = reason('intake.drawn-size', largest)
  const pixels = largest.width * largest.height
  if (limit === null || pixels <= limit) return { size, problem: null }
  const most = Math.floor(dpi * Math.sqrt(limit / pixels))
  return { size, problem: reason('intake.too-many-pixels', { ...largest, limit, most }) }
}

/** Dots per inch as they are written; undefined when nothing is, null when it is no number above nothing. */
export function usableDpi(text: string): number | undefined | null {
  if (text.trim() === '') return undefined
  const dpi = Number(text.trim().replace(',', '.'))
  return Number.isFinite(dpi) && dpi > 0 ? dpi : null
}
