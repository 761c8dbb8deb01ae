import type { PageLook } from '../../../../contract/scan-look.ts'
import type { ScanFormat } from '../file/scan-format.ts'

/** What was read of one page of a scan. */
export interface PageRead {
  format: ScanFormat
  /** Pages in the file that are sheets of their own. */
  pages: number
  facts: PageLook
  /** What a person should know of the page, one sentence each. */
  remarks: string[]
}
