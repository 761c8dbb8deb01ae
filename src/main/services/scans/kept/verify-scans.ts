import { stat } from 'node:fs/promises'
import type { Job, Sheet } from '../../../../core/job/model/types.ts'
import { systemReason } from '../../files/system-reason.ts'
import { ServiceError } from '../../service-error.ts'
import { hashFile } from './hash-file.ts'
import { resolveScan } from './scan-path.ts'

export interface SheetScan {
  sheet: string
  file: string
  state: 'ok' | 'missing' | 'changed'
  /** What is wrong and what to do; empty when nothing is. */
  sentence: string
}

/** Whether a sheet's scan is still the file its marks were picked on. */
export async function verifySheet(
  sheet: Sheet,
  folder: string,
  hash: (path: string) => Promise<string> = hashFile,
): Promise<SheetScan> {
  const { file } = sheet.scan
  const name = `The scan ${file} of sheet ${sheet.id}`
  const missing = (sentence: string): SheetScan => ({ sheet: sheet.id, file, state: 'missing', sentence })
  let sha256: string
  try {
    const path = await resolveScan(folder, file, `sheet ${sheet.id}`)
    if (!(await stat(path)).isFile()) {
      return missing(`${name} is not a plain file: put the scan itself into the job's scans folder.`)
    }
    sha256 = await hash(path)
  } catch (error) {
    if (error instanceof ServiceError) return missing(error.message)
    return missing(
      `${name} can't be read because ${systemReason(error)}: put the file back into the job's scans folder.`,
    )
  }
  if (sha256 === sheet.scan.sha256.toLowerCase()) return { sheet: sheet.id, file, state: 'ok', sentence: '' }
  return {
    sheet: sheet.id,
    file,
    state: 'changed',
    sentence:
      `${name} is no longer the file that was picked on (its SHA-256 is ${sha256.slice(0, 12)}…, ` +
      `not ${sheet.scan.sha256.slice(0, 12)}…): put the old file back and open the job again, or bring this one in ` +
      'as a new sheet; where the marks still lie right on it, ' +
      `"scantling relink ${folder} ${sheet.id}" takes it for this sheet.`,
  }
}

/** Checks the scan of every sheet of a job, in the order of the sheets; a file of many pages is read once. */
export async function verifyScans(job: Job, folder: string): Promise<SheetScan[]> {
  const hashes = new Map<string, string>()
  const hashOnce = async (path: string): Promise<string> => {
    const known = hashes.get(path) ?? (await hashFile(path))
    hashes.set(path, known)
    return known
  }
  const found: SheetScan[] = []
  for (const sheet of job.sheets) found.push(await verifySheet(sheet, folder, hashOnce))
  return found
}
