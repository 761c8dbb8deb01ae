import { inWords, reason } from '../../words/services-words.ts'
import type { AddedScan } from './add-scan.ts'

/** What a person should know of a scan that was taken in, one sentence each. */
export function scanRemarks({ scan, scans, pages, chosen, remarks }: AddedScan): string[] {
  const all = remarks.map(inWords)
  if (pages > 1 && !chosen)
    all.unshift(inWords(reason('scan.more-pages', { scan: scan.file, pages, page: scan.page })))
  for (const { file, page, orientation } of scans) {
    if (orientation === undefined) continue
    const named = { scan: file, page: pages > 1 ? page : null }
    all.push(inWords(reason('page.asks-to-be-turned', named)))
  }
  return all
}

/** What a person should know of scans that were given twice, one sentence each. */
export const doubleRemarks = (names: readonly string[]): string[] =>
  names.map((scan) => inWords(reason('scan.given-twice', { scan })))
