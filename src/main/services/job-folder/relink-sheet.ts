import { readEdit } from '../../../core/job/edits/edit.ts'
import { itemCalled } from '../../../core/job/ids/label.ts'
import { labelIn } from '../../../core/job/ids/labels-of-job.ts'
import type { Sheet } from '../../../core/job/model/types.ts'
import { nameIn, nameItemIn } from '../../../core/words/name-in.ts'
import type { AnyReason } from '../../../core/words/reason.ts'
import { systemCause } from '../files/system-reason.ts'
import { LIMITS } from '../limits/kept-limits.ts'
import { storeScan } from '../scans/intake/add-scan.ts'
import { type ReadSheet, readSheets } from '../scans/intake/read-sheets.ts'
import { hashFile } from '../scans/kept/hash-file.ts'
import { resolveScan } from '../scans/kept/scan-path.ts'
import type { ReadWith } from '../scans/reader/read-scan.ts'
import { ServiceError } from '../service-error.ts'
import { reason } from '../words/services-words.ts'
import type { Acknowledged, JobSession } from './job-session.ts'

function sheetOf({ job, folder }: JobSession, sheet: string): Sheet {
  const found = itemCalled(job.sheets, sheet)
  if (found !== undefined) return found
  const sheets = job.sheets.map(({ id }) => id)
  throw new ServiceError(
    nameIn(reason('relink.no-such-sheet', { sheet, folder, sheets }), (id) => labelIn(job, id)),
  )
}

/** How scans are read where nobody says otherwise. */
const USUAL: RelinkWith = { limits: LIMITS }

export type RelinkWith = Pick<ReadWith, 'limits' | 'password'>

/**
 * What a scan says of the page that a sheet is on, which is decoded once; a drawn page is drawn at the same dots per
 * inch.
 * @throws ServiceError when the sheet's picks could not lie on it where they did: another size, or too few pages
 */
async function suitingSheet(
  sheet: Sheet,
  path: string,
  called: string,
  { limits, password }: RelinkWith,
): Promise<{ pages: number; sheets: [ReadSheet]; remarks: AnyReason[] }> {
  const { id, scan } = sheet
  const { page, drawnAt } = scan
  const { pages, sheets, remarks } = await readSheets(
    { path, called, password, pages: [{ page, drawnAt }] },
    { limits },
  )
  const [read] = sheets
  if (read !== undefined && read.width === scan.width && read.height === scan.height) {
    return { pages, sheets: [read], remarks }
  }
  if (read === undefined) throw new RangeError(`Nothing was read of page ${page} of ${called}.`)
  const { width, height } = read
  const wanted = { width: scan.width, height: scan.height }
  const problem = reason('relink.other-size', { sheet: id, scan: called, width, height, wanted })
  throw new ServiceError(nameItemIn(problem, sheet))
}

/**
 * Ties a sheet to a scan in the job's scans/ folder as the file is now, after a person has seen that the sheet's
 * marks still lie where they were picked. An edit like any other: kept, with who and when.
 * @param called the id of the sheet, or its label
 * @param file name in scans/; default: the one the sheet names already
 * @throws ServiceError when there is no such scan, it is damaged, or it has another size or too few pages
 */
export async function relinkSheet(
  session: JobSession,
  called: string,
  by: string,
  file?: string,
  how: RelinkWith = USUAL,
): Promise<Acknowledged> {
  const sheet = sheetOf(session, called)
  const name = file ?? sheet.scan.file
  let path: string
  try {
    path = await resolveScan(session.folder, name, sheet)
  } catch (error) {
    if (error instanceof ServiceError) throw error
    const problem = reason('relink.scan-not-there', {
      sheet: sheet.id,
      scan: name,
      cause: systemCause(error),
    })
    throw new ServiceError(nameItemIn(problem, sheet))
  }
  const { sheets } = await suitingSheet(sheet, path, name, how)
  return link(session, sheet, { file: name, sha256: await hashFile(path), ...sheets[0] }, by)
}

/** Whatever else the sheet says of its scan stays. */
function link(
  session: JobSession,
  { id, scan: before }: Sheet,
  now: Sheet['scan'],
  by: string,
): Promise<Acknowledged> {
  const { dpi: _, orientation: __, drawnAt: ___, ...kept } = before
  return session.edit(readEdit({ do: 'change-sheet', id, set: { scan: { ...kept, ...now } } }), by)
}

/**
 * Copies a scan into the job's scans/ folder and ties a sheet to it; see `relinkSheet`.
 * @throws ServiceError as `relinkSheet` and `addScan`; a scan that does not suit is not copied.
 */
export async function relinkSheetToCopy(
  session: JobSession,
  called: string,
  by: string,
  path: string,
  how: RelinkWith = USUAL,
): Promise<Acknowledged> {
  const sheet = sheetOf(session, called)
  const read = await suitingSheet(sheet, path, path, how)
  const { scan } = await storeScan(session.folder, { path, called: path }, read)
  return link(session, sheet, scan, by)
}
