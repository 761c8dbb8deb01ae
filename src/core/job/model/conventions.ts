import type { Job } from './types.ts'

/** What the figures of a job are read by: the unit of a bare number, the sheet gauge and the general tolerance. */
export type Conventions = Pick<Job, 'unit' | 'gauge' | 'tolerance'>

/** Those of a job, without the job. */
export const conventionsOf = ({ unit, gauge, tolerance }: Conventions): Conventions => ({
  unit,
  ...(gauge === undefined ? {} : { gauge }),
  ...(tolerance === undefined ? {} : { tolerance }),
})

/** Whether figures mean the same by both. */
export const meanTheSame = (a: Conventions, b: Conventions): boolean =>
  a.unit === b.unit && a.gauge === b.gauge && a.tolerance === b.tolerance
