import { expect, it } from 'vitest'
import { pixel } from '../../../../src/core/geometry/frames.ts'
import type { Job, Mark } from '../../../../src/core/job/model/types.ts'
import { readJob } from '../../../../src/core/job/read-job.ts'
import { dimensionTable } from '../../../../src/core/ledger/table/dimension-table.ts'
import { dimension, point, scaled, smallJob } from '../small-job.ts'

const people = [
  { id: 'ada', name: 'Ada Quill' },
  { id: 'ben', name: 'Ben Adze' },
]

/** A rivet that Ada picked three times at 1600, and Ben three times so far from there. */
const rivet = (apart: number): Mark => {
  const places = [1599, 1601, 1600, 1599 + apart, 1601 + apart, 1600 + apart]
  const [first = 0, ...again] = places
  return point('D', pixel(first, 500), {
    by: 'ada',
    repeats: again.map((x, i) => [x, 500 + (i % 2)]),
    repeatedBy: again.map((_, i) => ({ by: i < 2 ? 'ada' : 'ben' })),
  } as never)
}
const jobOf = (mark: Mark): Job =>
  smallJob({
    people,
    marks: [mark, point('E', pixel(100, 500))],
    dimensions: [dimension('rivet', [scaled(['D', 'E'])])],
  })
const cautionOf = (job: Job) =>
  dimensionTable(job).cautions.find((caution) => caution.includes('people who picked it'))

it('a table says which marks people do not pick alike, and by how much', () => {
  // Within: squares 4 in x and 4/3 in y with 8 degrees of freedom. Between: 3 (4² + 4²) with 2, less that, over 3 each.
  expect(cautionOf(jobOf(rivet(8)))).toBe(
    "Mark D: the 2 people who picked it do not pick it alike: within one person's hand by 0.82 px, between people by 4.0 px. Agree on what is picked there, or have more people pick it.",
  )
})

it('not of marks that are picked alike, nor of what one person picked far apart', () => {
  expect(cautionOf(jobOf(rivet(0.2)))).toBeUndefined()
  const { repeatedBy: _, ...alone } = rivet(8)
  expect(cautionOf(jobOf(alone as Mark))).toBeUndefined()
})

it('a dimension is less sure where people differ than if one had picked as often', () => {
  const [row] = dimensionTable(jobOf(rivet(8))).rows
  const { repeatedBy: _, ...alone } = rivet(8)
  const [asOne] = dimensionTable(jobOf(alone as Mark)).rows
  expect(row?.value).toBeCloseTo(Number(asOne?.value), 9)
  expect(row?.U).toBeGreaterThan(2 * Number(asOne?.U))
})

it('a job that a program builds itself as version 1 gives the same table as one that is read', () => {
  const read = jobOf(rivet(8))
  const built: Job = { ...read, version: 1, marks: read.marks.map(({ picks: _, ...mark }) => mark as Mark) }
  expect(dimensionTable(built)).toEqual(dimensionTable(read))
  expect(dimensionTable(readJob(built))).toEqual(dimensionTable(read))
})
