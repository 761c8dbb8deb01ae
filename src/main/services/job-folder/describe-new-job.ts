import { basename, extname, resolve } from 'node:path'
import { countingIds } from '../../../core/job/ids/counting-ids.ts'
import { newJob } from '../../../core/job/model/new-job.ts'
import type { Job, Sheet, Unit } from '../../../core/job/model/types.ts'
import type { AddedScan } from '../scans/intake/add-scan.ts'

/** What a sheet is called until a person names it: the scan's file, without its extension. */
const sheetTitle = (file: string): string => basename(file, extname(file))

/**
 * The sheets of a scan that was added, in order; of a file of many pages each is named with its page.
 * @param identify gives what the next sheet goes by
 */
export const sheetsOf = (
  { scans, pages }: AddedScan,
  identify: () => Pick<Sheet, 'id' | 'number'>,
): Sheet[] =>
  scans.map((scan) => {
    const title = sheetTitle(scan.file)
    return { ...identify(), title: pages > 1 ? `${title}, page ${scan.page}` : title, record: {}, scan }
  })

/** What a person says of a job that is made. */
interface NewJob {
  title?: string | undefined
  unit: Unit
  /** Who makes it. */
  by?: string | undefined
  /** When, ISO 8601. */
  at?: string | undefined
}

/** The document of a new job: one sheet for each page that was chosen, named after its file. */
export function describeNewJob(
  folder: string,
  added: readonly AddedScan[],
  { title, unit, by, at }: NewJob,
): Job {
  // No copy of the job is there yet, and whoever writes edits for it by hand has these ids to write.
  const counted = countingIds()
  const person = by === undefined ? undefined : counted('person')
  const entered = { ...(person === undefined ? {} : { by: person }), ...(at === undefined ? {} : { at }) }
  const identify = () => ({ id: counted('sheet') })
  return {
    ...newJob(title ?? basename(resolve(folder)), unit),
    people: by === undefined || person === undefined ? [] : [{ id: person, name: by, ...entered }],
    sheets: added.flatMap((scan) => sheetsOf(scan, identify).map((sheet) => ({ ...sheet, ...entered }))),
  }
}
