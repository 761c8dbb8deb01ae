import { expect, it } from 'vitest'
import { STANDING_REASONS } from '../../../src/core/ledger/table/cautions.ts'
import { dimensionTable } from '../../../src/core/ledger/table/dimension-table.ts'
import { reason } from '../../../src/core/words/core-words.ts'
import { placeOfCaution } from '../../../src/renderer/table/caution-place.ts'
import { sampleJob } from '../sample-job.ts'

it('a caution of the sample leads to the view that it is about, and one that stands on every table nowhere', () => {
  const { cautionReasons } = dimensionTable(sampleJob)
  const own = cautionReasons.filter(({ code }) => code === 'caution.of-view')
  expect(own.length).toBeGreaterThan(0)
  expect(own.map((one) => placeOfCaution(one, sampleJob))).toContainEqual({ kind: 'view', id: 'elevation' })
  for (const standing of STANDING_REASONS) expect(placeOfCaution(standing, sampleJob)).toBeNull()
})

it('a caution leads to its dimension or its mark, and to neither where that is gone', () => {
  const [mark] = sampleJob.marks
  if (mark === undefined) throw new Error('The sample has marks.')
  const scatters = reason('caution.picks-scatter', { mark: mark.id, s: 2, sigma: 1 })
  expect(placeOfCaution(scatters, sampleJob)).toEqual({ kind: 'mark', id: mark.id })
  expect(placeOfCaution(scatters, { ...sampleJob, marks: [] })).toBeNull()
  const apart = reason('caution.readings-far-apart', {
    dimension: 'hood_od',
    evidence: 'p1',
    least: '5 in',
    most: '7 in',
  })
  expect(placeOfCaution(apart, sampleJob)).toEqual({ kind: 'dimension', name: 'hood_od' })
})

it('of two views of one name neither is chosen for the other', () => {
  const [view] = sampleJob.views
  if (view === undefined) throw new Error('The sample has views.')
  const about = reason('caution.scale-not-known', { view: view.name, dpi: 300 })
  const twice = { ...sampleJob, views: [view, { ...view, id: 'another' }] }
  expect(placeOfCaution(about, sampleJob)).toEqual({ kind: 'view', id: view.id })
  expect(placeOfCaution(about, twice)).toBeNull()
})
