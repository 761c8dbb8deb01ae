import { describe, expect, it } from 'vitest'
import sample from '../../../samples/deck-ventilator/job.json'
import { type Pixel, pixel } from '../../../src/core/geometry/frames.ts'
import { newJob } from '../../../src/core/job/model/new-job.ts'
import type { Job, Reference } from '../../../src/core/job/model/types.ts'
import { readJob } from '../../../src/core/job/read-job.ts'
import { dimensionTable } from '../../../src/core/ledger/table/dimension-table.ts'
import { STATIONS, type Station } from '../../../src/renderer/bench/stations.ts'
import { guide } from '../../../src/renderer/guide/guide.ts'
import { noPicks, type Picks, withPick } from '../../../src/renderer/picking/picks.ts'

const LOOKING = noPicks({ kind: 'look' })

/** A job with one sheet and one view with so many of three figured sizes. */
function aJob({ sheets = 1, views = 1, sizes = 0, mapping = 'two-axis' as const } = {}): Job {
  const job = newJob('Capstan', 'in')
  if (sheets === 0) return job
  const scan = { file: 'capstan.png', sha256: '0'.repeat(64), page: 1, width: 2000, height: 1500, dpi: 300 }
  job.sheets.push({ id: 'S1', title: 'Capstan', record: {}, scan })
  if (views === 0) return job
  const at: Pixel[] = [pixel(200, 300), pixel(1200, 300), pixel(200, 1100), pixel(1200, 1100)]
  job.marks = at.map((pixel, k) => ({
    id: `M${k + 1}`,
    sheet: 'S1',
    how: 'hand',
    sigma: 1,
    kind: 'point',
    pixel,
  }))
  const references: Reference[] = [
    { id: 'R1', kind: 'distance', marks: ['M1', 'M2'], size: '10"' },
    { id: 'R2', kind: 'distance', marks: ['M1', 'M3'], size: '8"' },
    { id: 'R3', kind: 'distance', marks: ['M3', 'M4'], size: '10"' },
  ]
  job.views.push({
    id: 'V1',
    sheet: 'S1',
    name: 'Elevation',
    mapping,
    references: references.slice(0, sizes),
  })
  return job
}

const at = (station: Station, job: Job, picks: Picks = LOOKING) =>
  guide(job, dimensionTable(job), station, picks)

describe('at station Sheet', () => {
  it('a job without a sheet is told to bring in a scan', () => {
    const { next, missing } = at('sheet', aJob({ sheets: 0 }))
    expect(next).toMatch(/^Bring in a scan/)
    expect(missing).toBe('Missing for Scale: a sheet.')
  })

  it('a new sheet is to be looked over', () => {
    const { next, missing } = at('sheet', aJob({ views: 0 }))
    expect(next).toMatch(/go to Scale/)
    expect(missing).toBeNull()
  })

  it('a sheet that is in use and has no record is to be recorded', () => {
    expect(at('sheet', aJob()).next).toMatch(/^Write down what “Capstan” is/)
  })
})

describe('at station Scale', () => {
  it('without a sheet, the way leads back to station 1', () => {
    expect(at('scale', aJob({ sheets: 0 })).next).toMatch(/station 1/)
  })

  it('without a view, one is to be named', () => {
    const { next, missing } = at('scale', aJob({ views: 0 }))
    expect(next).toMatch(/^Name a view/)
    expect(missing).toBe('Missing for Pick: a view.')
  })

  it('a view without figured sizes needs its first', () => {
    const { next, missing } = at('scale', aJob())
    expect(next).toBe('Add a size that is printed in “Elevation” and pick its two ends.')
    expect(missing).toBe('Missing for Pick: a view whose scale is known.')
  })

  it('of several without figured sizes, the one that the desk shows is named', () => {
    const job = aJob()
    const [first] = job.views
    if (first !== undefined) job.views.push({ ...first, id: 'V2', name: 'Plan' })
    expect(guide(job, dimensionTable(job), 'scale', LOOKING, 'V2').next).toMatch(/printed in “Plan”/)
    expect(guide(job, dimensionTable(job), 'scale', LOOKING, null).next).toMatch(/printed in “Elevation”/)
  })

  it('a view whose sizes do not suffice needs one in another direction', () => {
    expect(at('scale', aJob({ sizes: 1 })).next).toMatch(/another figured size, in another direction/)
  })

  it('a view whose sizes only just suffice would be checked by one more, and picking may begin', () => {
    const { next, missing } = at('scale', aJob({ sizes: 2 }))
    expect(next).toMatch(/one more figured size to “Elevation”/)
    expect(missing).toBeNull()
  })

  it('a view whose sizes agree is done', () => {
    expect(at('scale', aJob({ sizes: 3 })).next).toBe('Every view has its scale. Go to Pick.')
  })

  it('a size that does not fit is to be looked at', () => {
    const job = readJob(sample)
    const { next, about } = at('scale', job)
    expect(next).toBe(
      'The figured size 14 1/4" of “Elevation, half in section” does not fit the others and is set aside: look at it again.',
    )
    expect(about).toEqual({ kind: 'reference', view: 'elevation', id: 'R4' })
  })

  it('a size that does not fit comes before a view that has no scale yet', () => {
    const job = readJob(sample)
    const bare = { id: 'bare', sheet: 'sheet-1', name: 'Stay', mapping: 'uniform' as const, references: [] }
    expect(at('scale', { ...job, views: [bare, ...job.views] }).next).toMatch(/^The figured size 14 1\/4"/)
  })

  it('the picks of a tool come first, one after the other, and then its form', () => {
    const job = aJob()
    const none = noPicks({ kind: 'reference', view: 'V1', reference: 'distance' })
    const one = withPick(none, pixel(200, 300))
    const two = withPick(one, pixel(1200, 300))
    expect(at('scale', job, none).next).toBe('Pick the first end.')
    expect(at('scale', job, one).next).toBe('Pick the other end.')
    expect(at('scale', job, two).next).toBe('Write the size as it is printed, and press Enter.')
    const outline = withPick(noPicks({ kind: 'outline' }), pixel(0, 0))
    expect(at('scale', job, outline).next).toBe('Pick the corner opposite.')
    expect(at('scale', job, withPick(outline, pixel(900, 900))).next).toMatch(/^Name the view/)
  })
})

describe('at station Pick', () => {
  it('nothing can be picked before a view has its scale', () => {
    for (const job of [aJob({ sheets: 0 }), aJob({ views: 0 }), aJob(), aJob({ sizes: 1 })]) {
      expect(at('pick', job).next).toMatch(/station 2/)
    }
  })

  it('one chooses what to measure, picks it, and names it', () => {
    const job = aJob({ sizes: 2 })
    const none = noPicks({ kind: 'measure', view: 'V1', measure: 'diameter' })
    const three = [pixel(1, 0), pixel(0, 1), pixel(2, 1)].reduce(
      (picks, [x = 0, y = 0]) => withPick(picks, pixel(x, y)),
      none,
    )
    expect(at('pick', job).next).toMatch(/^Choose what to measure/)
    expect(at('pick', job, none).next).toBe('Pick a point on the rim.')
    expect(at('pick', job, three).next).toBe('Say what it is, and press Enter to keep it.')
    expect(at('pick', job).missing).toBe('No dimension is in the table yet.')
  })
})

describe('the guide', () => {
  it('has a line on what is next at every station before the first table is worked out', () => {
    for (const station of STATIONS) {
      for (const job of [aJob({ sheets: 0 }), aJob({ views: 0 }), aJob({ sizes: 3 })]) {
        const { next, missing } = guide(job, null, station, LOOKING)
        expect(next).toMatch(/\.$/)
        if (missing !== null) expect(missing).toMatch(/\.$/)
      }
    }
  })
})
