import type { AddedScan } from './add-scan.ts'

/** What a person should know of a scan that was taken in, one sentence each. */
export function scanRemarks({ scan, scans, pages, chosen, remarks }: AddedScan): string[] {
  const all = [...remarks]
  if (pages > 1 && !chosen)
    all.unshift(`The scan ${scan.file} has ${pages} pages, and only page ${scan.page} has a sheet.`)
  for (const { file, page, orientation } of scans) {
    if (orientation === undefined) continue
    const name = pages > 1 ? `Page ${page} of ${file}` : `The scan ${file}`
    all.push(`${name} asks to be shown turned, and its pixels are used as they are stored.`)
  }
  return all
}

/** What a person should know of scans that were given twice, one sentence each. */
export const doubleRemarks = (names: readonly string[]): string[] =>
  names.map((name) => `"${name}" is a scan that was given before it, and has no second sheet.`)
