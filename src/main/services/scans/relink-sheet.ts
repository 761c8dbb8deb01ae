import type { Sheet } from '../../../core/job/types.ts'
import { systemReason } from '../files/system-reason.ts'
import type { Acknowledged, JobSession } from '../job-folder/job-session.ts'
import { ServiceError } from '../service-error.ts'
import { addScan } from './add-scan.ts'
import { mustDecode } from './decode-scan.ts'
import { hashFile } from './hash-file.ts'
import { inspectScan, type ScanFacts } from './inspect-scan.ts'
import { resolveScan } from './scan-path.ts'

function sheetOf(session: JobSession, sheetId: string): Sheet {
  const sheet = session.job.sheets.find(({ id }) => id === sheetId)
  if (sheet !== undefined) return sheet
  const ids = session.job.sheets.map(({ id }) => id).join(', ')
  throw new ServiceError(
    `There is no sheet ${sheetId} in the job ${session.folder}; its sheets are: ${ids === '' ? 'none' : ids}.`,
  )
}

/**
 * What a scan says of the page that a sheet is on.
 * @throws ServiceError when the sheet's picks could not lie on it where they did: another size, or too few pages
 */
async function suitingFacts({ id, scan }: Sheet, path: string, name: string): Promise<ScanFacts> {
  const first = await inspectScan(path, name)
  if (scan.page > first.pages) {
    throw new ServiceError(
      `Sheet ${id} is page ${scan.page} of its scan, but ${name} has only ${first.pages}.`,
    )
  }
  const facts = scan.page === 1 ? first : await inspectScan(path, name, scan.page)
  if (facts.width === scan.width && facts.height === scan.height) return facts
  throw new ServiceError(
    `Sheet ${id} can't be linked to the scan ${name}, which has ${facts.width} × ${facts.height} pixels and not ` +
      `${scan.width} × ${scan.height}, so that no pick would lie where it was made: ` +
      'give a scan of the same size, or add a sheet for this one and pick anew.',
  )
}

/**
 * Ties a sheet to a scan in the job's scans/ folder as the file is now, after a person has seen that the sheet's
 * marks still lie where they were picked. An edit like any other: journalled, with who and when.
 * @param file name in scans/; default: the one the sheet names already
 * @throws ServiceError when there is no such scan, it is damaged, or it has another size or too few pages
 */
export async function relinkSheet(
  session: JobSession,
  sheetId: string,
  by: string,
  file?: string,
): Promise<Acknowledged> {
  const sheet = sheetOf(session, sheetId)
  const name = file ?? sheet.scan.file
  let path: string
  try {
    path = await resolveScan(session.folder, name, `sheet ${sheetId}`)
  } catch (error) {
    if (error instanceof ServiceError) throw error
    throw new ServiceError(
      `Sheet ${sheetId} can't be linked to the scan ${name} because ${systemReason(error)}: ` +
        "put the file into the job's scans folder first.",
    )
  }
  const facts = await suitingFacts(sheet, path, name)
  await mustDecode(path, name, sheet.scan.page)
  const sha256 = await hashFile(path)
  const { dpi: _, ...kept } = sheet.scan
  const scan = { ...kept, file: name, sha256, ...(facts.dpi === undefined ? {} : { dpi: facts.dpi }) }
  return session.edit({ do: 'change-sheet', id: sheetId, set: { scan } }, by)
}

/**
 * Copies a scan into the job's scans/ folder and ties a sheet to it; see `relinkSheet`.
 * @throws ServiceError as `relinkSheet` and `addScan`; a scan that does not suit is not copied.
 */
export async function relinkSheetToCopy(
  session: JobSession,
  sheetId: string,
  by: string,
  path: string,
): Promise<Acknowledged> {
  await suitingFacts(sheetOf(session, sheetId), path, path)
  const { scan } = await addScan(session.folder, path)
  return relinkSheet(session, sheetId, by, scan.file)
}
