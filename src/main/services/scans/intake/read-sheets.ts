import type { Sheet } from '../../../../core/job/model/types.ts'
import type { AnyReason } from '../../../../core/words/reason.ts'
import type { GivenScan, WantedPage } from '../file/given-scan.ts'
import type { PageRead } from '../page/page-read.ts'
import { type ReadWith, readPage } from '../reader/read-scan.ts'

/** What a sheet says of its page of a scan, but for the file. */
export type ReadSheet = Omit<Sheet['scan'], 'file' | 'sha256'>

const FIRST: readonly WantedPage[] = [{}]

/** @param dpi what a person says, which counts more than what the file says */
function sheetOf({ facts }: PageRead, { dpi = facts.dpi }: Pick<WantedPage, 'dpi'>): ReadSheet {
  const { page, width, height, orientation, drawnAt } = facts
  return {
    page,
    width,
    height,
    ...(dpi === undefined ? {} : { dpi }),
    ...(orientation === undefined ? {} : { orientation }),
    ...(drawnAt === undefined ? {} : { drawnAt }),
  }
}

/**
 * Reads the pages of a scan that are to become sheets, each decoded once; one that is named twice counts once.
 * @throws ServiceError when any of them can't be a sheet; ScanLocked when the scan wants a password
 */
export async function readSheets(
  given: GivenScan,
  { limits, signal }: Pick<ReadWith, 'limits' | 'signal'>,
): Promise<{ pages: number; sheets: ReadSheet[]; remarks: AnyReason[] }> {
  const { pages: wanted = FIRST, password } = given
  const once = [...new Map(wanted.map((one) => [one.page, one])).values()]
  const sheets: ReadSheet[] = []
  const remarks: AnyReason[] = []
  let pages = 1
  for (const one of once) {
    const read = await readPage(given, one.page, one.drawnAt, { limits, password, signal })
    pages = read.pages
    sheets.push(sheetOf(read, one))
    if (one.dpi === undefined) remarks.push(...read.remarks)
  }
  return { pages, sheets, remarks }
}
