import type { AddedScan } from './add-scan.ts'

/** What a person should know of a scan that was taken in, one sentence each. */
export function scanRemarks({ scan, facts }: AddedScan): string[] {
  const remarks: string[] = []
  if (facts.pages > 1) remarks.push(`${scan.file} has ${facts.pages} pages, and only page 1 has a sheet.`)
  if (facts.orientation !== undefined) {
    remarks.push(`${scan.file} asks to be shown turned, and its pixels are used as they are stored.`)
  }
  return remarks
}

/** What a person should know of scans that were given twice, one sentence each. */
export const doubleRemarks = (names: readonly string[]): string[] =>
  names.map((name) => `"${name}" is a scan that was given before it, and has no second sheet.`)
