import { readdir, rm } from 'node:fs/promises'
import { join } from 'node:path'
import type { RequestAnswer } from '../../../contract/requests.ts'
import { type Edit, readEdit } from '../../../core/job/edits/edit.ts'
import { called, labelOf } from '../../../core/job/ids/label.ts'
import { newIdentities } from '../../../core/job/ids/new-identity.ts'
import type { Job, Sheet } from '../../../core/job/model/types.ts'
import { mint } from '../ids/mint.ts'
import { sheetsOf } from '../job-folder/describe-new-job.ts'
import { scansFolder } from '../job-layout/job-layout.ts'
import type { Limits } from '../limits/kept-limits.ts'
import type { GivenScan } from '../scans/file/given-scan.ts'
import { addScan } from '../scans/intake/add-scan.ts'
import { scanRemarks } from '../scans/intake/scan-remarks.ts'
import type { JobOnBench } from './job-on-bench.ts'
import type { Passwords } from './passwords.ts'

/** All of them or none, and undone as one. */
function editOf(items: readonly Sheet[]): Edit {
  const edits = items.map((item): Edit => ({ do: 'add-sheet', item }))
  const [only] = edits
  if (edits.length === 1 && only !== undefined) return only
  const [first, last] = [items[0], items.at(-1)].map((item) => item && labelOf(item))
  return { do: 'several', name: `add ${edits.length} sheets, ${first} to ${last}`, edits }
}

export interface BringIn {
  bench: JobOnBench
  passwords: Passwords
  limits: Limits
}

/**
 * Takes a scan into the job that is open and makes sheets of its pages, by an edit like any other.
 * @throws ServiceError when a page can't be read or the edit can't be made; job and folder are then as they were
 */
export async function bringInSheets(
  { bench, passwords, limits }: BringIn,
  given: GivenScan,
  by: string,
): Promise<RequestAnswer<'add-sheets'>> {
  bench.mustBeWritable()
  const scans = scansFolder(bench.folder)
  const before = new Set(await readdir(scans).catch(() => []))
  const added = await addScan(bench.folder, given, { limits })
  const { file, sha256 } = added.scan
  try {
    const { job } = bench.session
    const items = sheetsOf(added, newIdentities('sheet', job.sheets, mint))
    const remarks = [...scanRemarks(added), ...items.flatMap((item) => alike(job, item))]
    const committed = await bench.make({ kind: 'edit', edit: readEdit(editOf(items)) }, by)
    passwords.keep(sha256, given.password)
    return { ...committed, sheets: items.map(({ id }) => id), remarks }
  } catch (error) {
    if (!before.has(file)) await rm(join(scans, file), { force: true }).catch(() => undefined)
    throw error
  }
}

function alike(job: Job, { scan }: Sheet): string[] {
  const double = job.sheets.find(
    (one) => one.scan.sha256.toLowerCase() === scan.sha256 && one.scan.page === scan.page,
  )
  if (double === undefined) return []
  const what = scan.page === 1 ? `The scan ${scan.file}` : `Page ${scan.page} of ${scan.file}`
  return [`${what} is the same as that of ${called('sheet', double)} (${double.title}).`]
}
