import { mkdir, readdir, rm } from 'node:fs/promises'
import { join } from 'node:path'
import type { Job } from '../../../core/job/model/types.ts'
import { readJob } from '../../../core/job/read-job.ts'
import { replaceFile } from '../files/replace-file.ts'
import { systemCause, systemCode } from '../files/system-reason.ts'
import { cacheFolder, historyFile, issuedFolder, jobFile, scansFolder } from '../job-layout/job-layout.ts'
import { LIMITS, type Limits } from '../limits/kept-limits.ts'
import { loginName } from '../people/login-name.ts'
import type { GivenScan } from '../scans/file/given-scan.ts'
import { type AddedScan, givenScan, storeScan } from '../scans/intake/add-scan.ts'
import { readSheets } from '../scans/intake/read-sheets.ts'
import { ServiceError } from '../service-error.ts'
import { reason } from '../words/services-words.ts'
import { beginHistory } from './history/begin-history.ts'
import { snapshotText } from './history/snapshot.ts'

async function mustBeFree(folder: string): Promise<void> {
  try {
    const names = await readdir(folder)
    if (names.length > 0) {
      throw new ServiceError(reason('new-job.not-empty', { folder }))
    }
  } catch (error) {
    if (error instanceof ServiceError) throw error
    if (systemCode(error) === 'ENOENT') return
    if (systemCode(error) === 'ENOTDIR') {
      throw new ServiceError(reason('new-job.is-a-file', { folder }))
    }
    throw new ServiceError(reason('new-job.unusable', { folder, cause: systemCause(error) }))
  }
}

/**
 * Makes a job folder with its scans. job.json is written last, so that a folder left by a process that died is not
 * taken for a job.
 * @param given paths of scans, or paths with what messages call them
 * @param describe makes the job document once the scans are in; `doubles` are those (as they are called) whose bytes
 *   are those of a scan before them, so that they are not in `scans` again
 * @throws ServiceError when the folder is in use or a scan can't be read; what was made is removed again.
 */
export async function createJob(
  folder: string,
  given: readonly (string | GivenScan)[],
  describe: (scans: readonly AddedScan[], doubles: readonly string[]) => Job,
  limits: Limits = LIMITS,
  now: () => Date = () => new Date(),
): Promise<Job> {
  await mustBeFree(folder)
  const read: { scan: GivenScan; sheets: Awaited<ReturnType<typeof readSheets>> }[] = []
  for (const one of given) {
    const scan = typeof one === 'string' ? givenScan(one) : one
    read.push({ scan, sheets: await readSheets(scan, { limits }) })
  }

  const made: string[] = []
  try {
    const top = await mkdir(folder, { recursive: true })
    if (top !== undefined) made.push(top)
    for (const part of [scansFolder(folder), cacheFolder(folder), issuedFolder(folder)]) {
      await mkdir(part)
      made.push(part)
    }
    const scans: AddedScan[] = []
    const doubles: string[] = []
    for (const { scan: one, sheets } of read) {
      const added = await storeScan(folder, one, sheets)
      if (scans.some(({ scan }) => scan.sha256 === added.scan.sha256)) {
        doubles.push(one.called)
        if (!scans.some(({ scan }) => scan.file === added.scan.file)) {
          await rm(join(scansFolder(folder), added.scan.file))
        }
      } else scans.push(added)
    }
    const described = readJob(describe(scans, doubles))
    const by = described.people[0]?.id ?? loginName()
    const { text, job, tip } = beginHistory(described, { at: now().toISOString(), by, from: null })
    await replaceFile(historyFile(folder), text)
    made.push(historyFile(folder))
    await replaceFile(jobFile(folder), snapshotText(job, tip))
    return job
  } catch (error) {
    for (const path of made) await rm(path, { recursive: true, force: true })
    if (error instanceof ServiceError || systemCode(error) === undefined) throw error
    throw new ServiceError(reason('new-job.not-made', { folder, cause: systemCause(error) }))
  }
}
