import type { Job } from '../model/types.ts'
import type { BoxOfFigure } from './figure-box.ts'
import { printedOn } from './printed-on.ts'

/** Where on a sheet figures stand that somebody has looked at: taken for a dimension, or dismissed. */
export function boxesLookedAt(job: Job, sheet: string): BoxOfFigure[] {
  const dismissed = job.sheets.find(({ id }) => id === sheet)?.dismissed ?? []
  return [...printedOn(job, sheet), ...dismissed].map(({ box }) => box)
}
