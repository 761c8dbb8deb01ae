import { readdir, rm } from 'node:fs/promises'
import { join } from 'node:path'
import type { AskAnswer } from '../../../contract/asks.ts'
import type { Job } from '../../../core/job/types.ts'
import { sheetTitle } from '../job-folder/describe-new-job.ts'
import { scansFolder } from '../job-folder/layout.ts'
import { addScan, type GivenScan } from '../scans/add-scan.ts'
import { scanRemarks } from '../scans/scan-remarks.ts'
import type { JobOnBench } from './job-on-bench.ts'

/** One more than the highest number that a sheet of the job has: `S3` after `S2`. */
function freshSheetId({ sheets }: Job): string {
  const numbers = sheets.map(({ id }) => Number(/^S(\d{1,9})$/.exec(id)?.[1] ?? 0))
  return `S${Math.max(0, ...numbers) + 1}`
}

/**
 * Takes a scan into the job that is open and makes a sheet of it, by an edit like any other.
 * @throws ServiceError when the scan can't be read or the edit can't be made; job and folder are then as they were
 */
export async function bringInSheet(
  bench: JobOnBench,
  given: GivenScan,
  by: string,
): Promise<AskAnswer<'add-sheet'>> {
  bench.mustBeWritable()
  const scans = scansFolder(bench.folder)
  const before = new Set(await readdir(scans).catch(() => []))
  const added = await addScan(bench.folder, given.path, given.called)
  try {
    const { job } = bench.session
    const id = freshSheetId(job)
    const double = job.sheets.find(({ scan }) => scan.sha256.toLowerCase() === added.scan.sha256)
    const item = { id, title: sheetTitle(added.scan.file), record: {}, scan: added.scan }
    const kept = await bench.make({ kind: 'edit', edit: { do: 'add-sheet', item } }, by)
    const remarks = scanRemarks(added)
    if (double !== undefined) {
      remarks.push(`${added.scan.file} is the same scan as that of sheet ${double.id} (${double.title}).`)
    }
    return { ...kept, sheet: id, remarks }
  } catch (error) {
    if (!before.has(added.scan.file))
      await rm(join(scans, added.scan.file), { force: true }).catch(() => undefined)
    throw error
  }
}
