import { realpath } from 'node:fs/promises'
import { isAbsolute, join, relative } from 'node:path'
import { isScanName } from '../../../../core/job/model/scan-name.ts'
import { scansFolder } from '../../job-layout/job-layout.ts'
import { ServiceError } from '../../service-error.ts'

/**
 * The name of a scan as job.json gives it, relative to the job's scans/ folder, with `/` between folders.
 * @throws ServiceError for a name that could lead out of that folder on any system.
 */
export function confineScanName(name: string, what: string): string {
  if (!isScanName(name)) {
    throw new ServiceError(
      `The scan file ${JSON.stringify(name)} of ${what} is not inside the job's scans folder: ` +
        'put the file there and give its name alone.',
    )
  }
  return name
}

/**
 * Where a scan is on disk, symbolic links followed.
 * @throws ServiceError when a link leads out of scans/; the system's own error when the file is not there.
 */
export async function resolveScan(folder: string, name: string, what: string): Promise<string> {
  const scans = await realpath(scansFolder(folder))
  const path = await realpath(join(scans, confineScanName(name, what)))
  const inside = relative(scans, path)
  if (
    inside === '' ||
    inside === '..' ||
    inside.startsWith(`..${'/'}`) ||
    inside.startsWith('..\\') ||
    isAbsolute(inside)
  ) {
    throw new ServiceError(
      `The scan file ${name} of ${what} is a link that leads out of the job's scans folder: put the file itself there.`,
    )
  }
  return path
}
