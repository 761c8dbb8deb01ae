import type { Job } from '../../core/job/model/types.ts'

const COMMA = /\d,\d{1,2}(?!\d)/
const COMMAS = new WeakMap<Job, boolean>()

/** Whether any figure or reading of a job has a decimal comma. */
export function hasCommas(job: Job): boolean {
  const known = COMMAS.get(job)
  if (known !== undefined) return known
  const has = job.dimensions.some(({ evidence }) =>
    evidence.some((piece) =>
      piece.basis === 'printed'
        ? COMMA.test(piece.text)
        : piece.basis === 'found' && piece.readings.some((one) => COMMA.test(one)),
    ),
  )
  COMMAS.set(job, has)
  return has
}
