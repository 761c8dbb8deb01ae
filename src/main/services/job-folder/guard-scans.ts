import { labelIn } from '../../../core/job/ids/labels-of-job.ts'
import type { Job, Sheet } from '../../../core/job/model/types.ts'
import { nameIn } from '../../../core/words/name-in.ts'
import { confineScanName } from '../scans/kept/scan-path.ts'
import { isUnsound, type SheetScan, verifySheet } from '../scans/kept/verify-scans.ts'
import { ServiceError } from '../service-error.ts'
import { reason } from '../words/services-words.ts'
import type { SessionState } from './session-state.ts'
import { touchedSheets } from './touched-sheets.ts'

/**
 * Keeps picks and pictures together: no pick changes on a sheet whose scan is not the one picked on, and a sheet
 * is only linked to a scan that is there. Undoing a link may lead back to a scan that is gone; that is recorded.
 */
export async function guardScans(
  folder: string,
  state: SessionState,
  after: Job,
  mustBeThere: boolean,
): Promise<SheetScan[]> {
  const before = state.job
  const unsound = state.scans.filter(isUnsound)
  if (unsound.length > 0) {
    const touched = touchedSheets(before, after)
    const refused = unsound.find((scan) => touched.has(scan.sheet))
    if (refused !== undefined) {
      const { sheet, problem } = refused
      throw new ServiceError(
        nameIn(reason('session.scan-not-sound', { sheet, problem }), (id) => labelIn(before, id)),
      )
    }
  }
  if (before.sheets === after.sheets) return state.scans
  const known = new Map(state.scans.map((scan) => [scan.sheet, scan]))
  const earlier = new Map(before.sheets.map((sheet) => [sheet.id, sheet.scan]))
  const scans: SheetScan[] = []
  for (const sheet of after.sheets) {
    const kept = sameScan(earlier.get(sheet.id), sheet) ? known.get(sheet.id) : undefined
    if (kept !== undefined) {
      scans.push(kept)
      continue
    }
    confineScanName(sheet.scan.file, sheet)
    const found = await verifySheet(sheet, folder)
    if (mustBeThere && isUnsound(found)) throw new ServiceError(found.problem)
    scans.push(found)
  }
  return scans
}

function sameScan(earlier: Sheet['scan'] | undefined, sheet: Sheet): boolean {
  return earlier !== undefined && earlier.file === sheet.scan.file && earlier.sha256 === sheet.scan.sha256
}
