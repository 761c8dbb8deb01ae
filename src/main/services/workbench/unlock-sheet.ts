import { nameItemIn } from '../../../core/words/name-in.ts'
import { resolveScan } from '../scans/kept/scan-path.ts'
import { readPage } from '../scans/reader/read-scan.ts'
import { ServiceError } from '../service-error.ts'
import { reason } from '../words/services-words.ts'
import type { BringIn } from './bring-in-sheets.ts'

/**
 * Tries a password on the scan of a sheet, and keeps it for as long as the host runs when it opens it.
 * @throws ScanLocked when it does not; ServiceError when there is no such sheet, or the scan can't be read
 */
export async function unlockSheet(
  { bench, passwords, limits }: BringIn,
  id: string,
  password: string,
): Promise<void> {
  const found = bench.sheet(id)
  if (found === undefined) throw new ServiceError(reason('workbench.no-such-sheet'))
  const { scan } = found.sheet
  const path = await resolveScan(bench.folder, scan.file, found.sheet).catch((error: unknown) => {
    if (error instanceof ServiceError) throw error
    const problem = reason('workbench.scan-not-there', { scan: scan.file, sheet: id })
    throw new ServiceError(nameItemIn(problem, found.sheet))
  })
  await readPage({ path, called: scan.file }, scan.page, scan.drawnAt, { limits, password })
  passwords.keep(scan.sha256, password)
}
