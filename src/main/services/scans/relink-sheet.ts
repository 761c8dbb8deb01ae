import { systemReason } from '../files/system-reason.ts'
import type { Acknowledged, JobSession } from '../job-folder/job-session.ts'
import { ServiceError } from '../service-error.ts'
import { hashFile } from './hash-file.ts'
import { inspectScan } from './inspect-scan.ts'
import { resolveScan } from './scan-path.ts'

/**
 * Ties a sheet to a scan in the job's scans/ folder as the file is now, after a person has seen that the sheet's
 * marks still lie where they were picked. An edit like any other: journalled, with who and when.
 * @param file name in scans/; default: the one the sheet names already
 * @throws ServiceError when there is no such scan, or it has too few pages
 */
export async function relinkSheet(
  session: JobSession,
  sheetId: string,
  by: string,
  file?: string,
): Promise<Acknowledged> {
  const sheet = session.job.sheets.find(({ id }) => id === sheetId)
  if (sheet === undefined)
    throw new ServiceError(`There is no sheet ${sheetId} in the job ${session.folder}.`)
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
  const { width, height, dpi, pages } = await inspectScan(path)
  const { page } = sheet.scan
  if (page > pages) {
    throw new ServiceError(`Sheet ${sheetId} is page ${page} of its scan, but ${name} has only ${pages}.`)
  }
  const sha256 = await hashFile(path)
  const { dpi: _, ...kept } = sheet.scan
  const scan = { ...kept, file: name, sha256, page, width, height, ...(dpi === undefined ? {} : { dpi }) }
  return session.edit({ do: 'change-sheet', id: sheetId, set: { scan } }, by)
}
