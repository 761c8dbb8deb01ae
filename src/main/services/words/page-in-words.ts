import type { Say } from '../../../core/words/reason.ts'

/** A page of a scan, as a part of a reason. page: null where the scan has no other. sheet: whose it is, where that is said */
export type PagePart = {
  readonly scan: string
  readonly page: number | null
  readonly sheet?: string
}

/** A page at the beginning of a sentence: `Page 3 of plan.tif`, `The scan plan.tif of sheet S1`. */
export function pageBegins({ scan, page, sheet }: PagePart, say: Say): string {
  if (sheet !== undefined) return `The scan ${scan} of ${say.item('sheet', sheet)}`
  return page === null ? `The scan ${scan}` : `Page ${page} of ${scan}`
}

/** A page within a sentence: `page 3 of plan.pdf`, or only `plan.pdf`. */
export const pageWithin = ({ scan, page }: PagePart): string =>
  page === null ? scan : `page ${page} of ${scan}`
