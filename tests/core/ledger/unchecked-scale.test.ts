import { describe, expect, it } from 'vitest'
import { pixel } from '../../../src/core/geometry/frames.ts'
import type { Job, Reference } from '../../../src/core/job/model/types.ts'
import { readJob } from '../../../src/core/job/read-job.ts'
import { dimensionTable } from '../../../src/core/ledger/table/dimension-table.ts'
import { derived, dimension, point, printed, scaled, smallJob } from './small-job.ts'

const size = (id: string, a: string, b: string, text: string, more: object = {}): Reference => ({
  id,
  kind: 'distance',
  marks: [a, b],
  size: text,
  ...more,
})

/** One inch is 150 px; the view is drawn to half size and scanned at 300 dpi, which fits. */
const jobOf = (references: Reference[], parts: Partial<Job> = {}) =>
  smallJob({
    references,
    marks: [point('D', pixel(100, 1600)), point('E', pixel(800, 700)), point('F', pixel(2300, 700))],
    dimensions: [
      dimension('own', [scaled(['A', 'B'])]),
      dimension('figured', [printed('20"'), scaled(['A', 'B'])]),
      dimension('other', [scaled(['E', 'F'])]),
      dimension('half', [derived('other / 2')]),
      dimension('plain', [printed('3"')]),
    ],
    ...parts,
  })

function tableOf(job: Job) {
  const table = dimensionTable(job)
  const row = (name: string) => {
    const found = table.rows.find((one) => one.name === name)
    if (found === undefined) throw new Error(`no row ${name}`)
    return found
  }
  const [view] = table.views
  if (view === undefined) throw new Error('no view')
  return { table, row, view }
}

const ONE = [size('R1', 'A', 'B', '20"')]
const TWO = [...ONE, size('R2', 'A', 'D', '10"')]

describe('a view that rests on one figured size', () => {
  const { row, view } = tableOf(jobOf(ONE))

  it('says that nothing checks its scale, and why', () => {
    expect(view.unchecked).toBe(true)
    expect(view.remarks?.[0]).toMatch(
      /^Nothing checks this scale: it rests on one figured size\. .*out by a tenth/,
    )
  })

  it('has it said of each row that rests on it, and of no other', () => {
    for (const name of ['other', 'half']) {
      expect(row(name).unchecked).toEqual(['V1'])
      expect(row(name).why).toContain(
        'Nothing checks the scale of view "Elevation": it rests on one figured size.',
      )
    }
    expect(row('plain').unchecked).toBeUndefined()
    expect(row('plain').why).not.toContain('Nothing checks')
  })

  it('gives its own size back, which measures nothing and agrees with nothing', () => {
    expect(row('own')).toMatchObject({ value: null, status: 'open' })
    expect(row('own').why).toContain('nothing is measured by it')
    expect(row('figured')).toMatchObject({ value: 20, status: 'single' })
    expect(row('figured').why).toContain('that it agrees is no agreement')
  })
})

it('A figured size with an uncertainty of its own is given back as well by its own marks', () => {
  const { row } = tableOf(jobOf([size('R1', 'A', 'B', '20"', { u: '0.1"' })]))
  expect(row('own').value).toBeNull()
})

it('As many figured sizes as a mapping takes leave nothing to check it by; one more does, and then a size is measured', () => {
  const two = jobOf(TWO)
  const [view] = two.views
  const twoAxis = (job: Job): Job => ({
    ...job,
    views: job.views.map((v) => ({ ...v, mapping: 'two-axis' as const })),
  })
  if (view === undefined) throw new Error('no view')
  const without = tableOf(twoAxis(two))
  expect(without.view.remarks?.[0]).toContain('no more figured sizes than “Two ways” needs')
  expect(without.row('other').unchecked).toEqual(['V1'])
  const more = tableOf(twoAxis(jobOf([...TWO, size('R3', 'E', 'F', '10"')])))
  expect(more.view.unchecked).toBeUndefined()
  expect(more.row('own').value).toBeCloseTo(20, 1)
  expect(more.row('own').U).toBeGreaterThan(0.005)
})

it('A scale that the drawn scale contradicts by what an inch has of millimetres is asked about', () => {
  const job = jobOf([size('R1', 'A', 'B', '20 mm')])
  const { table, row } = tableOf(job)
  expect(table.cautions.some((caution) => caution.includes('inches taken for millimetres'))).toBe(true)
  expect(row('other').why).toContain("The drawn scale and the scan's dpi disagree with it")
  const unscaled = { ...job, views: job.views.map(({ drawnScale: _, ...rest }) => rest) }
  const alone = tableOf(readJob(JSON.parse(JSON.stringify(unscaled))))
  expect(alone.row('other').why).toContain(
    'A misread figure would not show: one more figured size would tell.',
  )
})
