import { realpath } from 'node:fs/promises'
import { isAbsolute, join, relative } from 'node:path'
import type { Labelled } from '../../../../core/job/ids/label.ts'
import { isScanName } from '../../../../core/job/model/scan-name.ts'
import { nameItemIn } from '../../../../core/words/name-in.ts'
import { scansFolder } from '../../job-layout/job-layout.ts'
import { ServiceError } from '../../service-error.ts'
import { reason } from '../../words/services-words.ts'

/**
 * The name of a scan as job.json gives it, relative to the job's scans/ folder, with `/` between folders.
 * @param sheet whose it is
 * @throws ServiceError for a name that could lead out of that folder on any system.
 */
export function confineScanName(name: string, sheet: Labelled): string {
  if (!isScanName(name)) {
    throw new ServiceError(
      nameItemIn(reason('scan.outside-the-folder', { scan: name, sheet: sheet.id }), sheet),
    )
  }
  return name
}

/**
 * Where a scan is on disk, symbolic links followed.
 * @param sheet whose it is
 * @throws ServiceError when a link leads out of scans/; the system's own error when the file is not there.
 */
export async function resolveScan(folder: string, name: string, sheet: Labelled): Promise<string> {
  const scans = await realpath(scansFolder(folder))
  const path = await realpath(join(scans, confineScanName(name, sheet)))
  const inside = relative(scans, path)
  if (
    inside === '' ||
    inside === '..' ||
    inside.startsWith('../') ||
    inside.startsWith('..\\') ||
    isAbsolute(inside)
  ) {
    throw new ServiceError(nameItemIn(reason('scan.leads-out', { scan: name, sheet: sheet.id }), sheet))
  }
  return path
}
