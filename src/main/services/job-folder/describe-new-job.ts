import { basename, extname, resolve } from 'node:path'
import { newJob } from '../../../core/job/model/new-job.ts'
import type { Job, Sheet, Unit } from '../../../core/job/model/types.ts'
import type { AddedScan } from '../scans/intake/add-scan.ts'

/** What a sheet is called until a person names it: the scan's file, without its extension. */
const sheetTitle = (file: string): string => basename(file, extname(file))

/** The sheets of a scan that was added, in order; of a file of many pages each is named with its page. */
export const sheetsOf = ({ scans, pages }: AddedScan, ids: (index: number) => string): Sheet[] =>
  scans.map((scan, index) => {
    const title = sheetTitle(scan.file)
    return { id: ids(index), title: pages > 1 ? `${title}, page ${scan.page}` : title, record: {}, scan }
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
  const person = by === undefined ? undefined : 'P1'
  const entered = { ...(person === undefined ? {} : { by: person }), ...(at === undefined ? {} : { at }) }
  const sheets: Sheet[] = []
  for (const scan of added) {
    const before = sheets.length
    const made = sheetsOf(scan, (index) => `S${before + index + 1}`)
    sheets.push(...made.map((sheet) => ({ ...sheet, ...entered })))
  }
  return {
    ...newJob(title ?? basename(resolve(folder)), unit),
    people: by === undefined || person === undefined ? [] : [{ id: person, name: by, ...entered }],
    sheets,
  }
}
