import { stat } from 'node:fs/promises'
import pLimit from 'p-limit'
import type { Job, Sheet } from '../../../../core/job/model/types.ts'
import { nameItemIn } from '../../../../core/words/name-in.ts'
import type { AnyReason } from '../../../../core/words/reason.ts'
import { systemCause } from '../../files/system-reason.ts'
import { ServiceError } from '../../service-error.ts'
import { reason } from '../../words/services-words.ts'
import { hashFile } from './hash-file.ts'
import { resolveScan } from './scan-path.ts'

/** Scans that are read at once, so that the disk is not waited for while another is hashed. */
const AT_ONCE = 4

/** How a sheet's scan was found. problem: what is wrong and what to do */
export type SheetScan = { sheet: string; file: string } & (
  | { state: 'ok'; problem: null }
  | { state: 'missing' | 'changed'; problem: AnyReason }
)

export const isUnsound = (scan: SheetScan): scan is SheetScan & { problem: AnyReason } => scan.state !== 'ok'

/** Whether a sheet's scan is still the file its marks were picked on. */
export async function verifySheet(
  sheet: Sheet,
  folder: string,
  hash: (path: string) => Promise<string> = hashFile,
): Promise<SheetScan> {
  const { id, scan } = sheet
  const { file, sha256: picked } = scan
  const found = { sheet: id, file }
  const named = { scan: file, page: null, sheet: id }
  const unsound = (state: 'missing' | 'changed', problem: AnyReason): SheetScan => ({
    ...found,
    state,
    problem: nameItemIn(problem, sheet),
  })
  let sha256: string
  try {
    const path = await resolveScan(folder, file, sheet)
    if (!(await stat(path)).isFile()) return unsound('missing', reason('sheet-scan.not-plain', named))
    sha256 = await hash(path)
  } catch (error) {
    if (error instanceof ServiceError) return unsound('missing', error.reason)
    return unsound('missing', reason('sheet-scan.not-read', { ...named, cause: systemCause(error) }))
  }
  if (sha256 === picked.toLowerCase()) return { ...found, state: 'ok', problem: null }
  return unsound('changed', reason('sheet-scan.changed', { ...named, folder, sha256, picked }))
}

/** Checks the scan of every sheet of a job, in the order of the sheets; a file of many pages is read once. */
export function verifyScans(job: Job, folder: string): Promise<SheetScan[]> {
  const hashes = new Map<string, Promise<string>>()
  const hashOnce = (path: string): Promise<string> => {
    const hash = hashes.get(path) ?? hashFile(path)
    hashes.set(path, hash)
    return hash
  }
  const limit = pLimit(AT_ONCE)
  return Promise.all(job.sheets.map((sheet) => limit(() => verifySheet(sheet, folder, hashOnce))))
}
