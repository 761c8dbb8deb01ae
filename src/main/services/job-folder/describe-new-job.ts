import { basename, extname, resolve } from 'node:path'
import { newJob } from '../../../core/job/new-job.ts'
import type { Job, Unit } from '../../../core/job/types.ts'
import type { AddedScan } from '../scans/add-scan.ts'

/** What a sheet is called until a person names it: the scan's file, without its extension. */
export const sheetTitle = (file: string): string => basename(file, extname(file))

/** The document of a new job: one sheet for each scan, named after its file. */
export function describeNewJob(
  folder: string,
  added: readonly AddedScan[],
  { title, unit, by }: { title?: string; unit: Unit; by?: string },
): Job {
  return {
    ...newJob(title ?? basename(resolve(folder)), unit),
    people: by === undefined ? [] : [{ id: 'P1', name: by }],
    sheets: added.map(({ scan }, index) => ({
      id: `S${index + 1}`,
      title: sheetTitle(scan.file),
      record: {},
      scan,
    })),
  }
}
