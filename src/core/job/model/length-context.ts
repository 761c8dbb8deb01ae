import type { LengthContext } from '../../quantity/parse/parse-length.ts'
import type { Job } from './types.ts'

/** What a bare number and a sheet gauge mean in a job. */
export const lengthContext = ({ unit, gauge }: Pick<Job, 'unit' | 'gauge'>): LengthContext => ({
  unit,
  gauge,
})
