import { readJob } from '../../../../src/core/job/read-job.ts'
import { dimensionTable } from '../../../../src/core/ledger/table/dimension-table.ts'
import type { TableRow } from '../../../../src/core/ledger/table/table.ts'
import type { RandomStream } from '../../../../src/core/uncertainty/random.ts'

/** A caliper as it is stated, mm. */
const RESOLUTION = 0.02
const LIMIT = 0.05

/** How readings with it are drawn. */
export interface Drawn {
  /** Readings in each set. */
  n: number
  /** Standard deviation of a reading, mm, before it is rounded to the resolution. */
  scatter: number
  /** Other dimensions of the job, each of such a set. */
  others: number
  /**
   * What the caliper is off by, once for the job: anywhere within its limit; or normal, of the same standard deviation,
   * so that nothing but how the scatter is known tells on how often the truth is held.
   */
  off: 'within' | 'normal'
  /** Sets of the first dimension; 1 unless said otherwise. */
  sets?: number
  /** Readings in each of those; n unless said otherwise. */
  ofFirst?: number
}

/** The first dimension of a job of readings that were drawn, and its true size, mm. */
export function drawnRow(drawn: Drawn, random: RandomStream): { row: TableRow; truth: number } {
  const { n, scatter, others, off, sets = 1, ofFirst = n } = drawn
  const u = LIMIT / Math.sqrt(3)
  const by = u * (off === 'within' ? Math.sqrt(3) * (2 * random.uniform() - 1) : random.normal())
  const found = (truth: number, id: string, count: number) => ({
    id,
    basis: 'found',
    instrument: 'I1',
    readings: Array.from({ length: count }, () => {
      const steps = Math.round((truth + by + scatter * random.normal()) / RESOLUTION)
      return `${(steps * RESOLUTION).toFixed(2)} mm`
    }),
  })
  const truths = Array.from({ length: 1 + others }, () => 50 + 100 * random.uniform())
  const dimensions = truths.map((truth, i) => ({
    name: `d${i}`,
    label: `Size ${i}`,
    kind: 'length',
    evidence: Array.from({ length: i === 0 ? sets : 1 }, (_, k) =>
      found(truth, `e${k}`, i === 0 ? ofFirst : n),
    ),
  }))
  const instruments = [{ id: 'I1', name: 'caliper', resolution: `${RESOLUTION} mm`, limit: `${LIMIT} mm` }]
  const empty = { people: [], sheets: [], views: [], marks: [], relations: [], notes: [] }
  const job = readJob({
    format: 'scantling-job',
    version: 1,
    title: 'Readings',
    unit: 'mm',
    ...empty,
    instruments,
    dimensions,
  })
  const row = dimensionTable(job).rows[0]
  if (row === undefined) throw new RangeError('The job has no dimension.')
  return { row, truth: truths[0] ?? Number.NaN }
}

/** Of so many jobs: how many hold the truth within U, how wide that is on the average, how many are in dispute. */
export function tally(drawn: Drawn, jobs: number, random: RandomStream) {
  let [held, U, disputed] = [0, 0, 0]
  for (let i = 0; i < jobs; i++) {
    const { row, truth } = drawnRow(drawn, random)
    if (Math.abs((row.value ?? Number.NaN) - truth) <= row.U) held++
    if (row.status === 'disputed') disputed++
    U += row.U / jobs
  }
  return { held, U, disputed }
}
