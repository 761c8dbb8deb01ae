import { describe, expect, it } from 'vitest'
import { degrees } from '../../../../src/core/geometry/angle-units.ts'
import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import type { Edit } from '../../../../src/core/job/edits/edit.ts'
import { applyEdit } from '../../../../src/core/job/edits/edit.ts'
import { addView } from '../../../../src/core/job/from-picks/add-view.ts'
import {
  straightenSheet,
  takeBackStraightening,
} from '../../../../src/core/job/from-picks/straighten-sheet.ts'
import { newJob } from '../../../../src/core/job/model/new-job.ts'
import type { Job } from '../../../../src/core/job/model/types.ts'
import { seededMint } from '../ids/seeded-mint.ts'

const CORNERS: Pixel[] = [pixel(0, 0), pixel(900, 0), pixel(900, 700)]

/** A job with one sheet and two views on it. */
function withViews(): Job {
  const job = newJob('Windlass', 'in')
  job.sheets.push({
    id: 'S1',
    title: 'Windlass',
    record: {},
    scan: { file: 'windlass.png', sha256: '0'.repeat(64), page: 1, width: 2000, height: 1500 },
  })
  for (const id of ['V1', 'V2']) {
    job.views.push({ id, sheet: 'S1', name: id, mapping: 'two-axis', references: [] })
  }
  return job
}

const made = (job: Job, edit: Edit): Job => applyEdit(job, edit).job

describe('straightening a sheet', () => {
  it('is one edit under one name, and the grain of its views follows', () => {
    const edit = straightenSheet(withViews(), 'S1', degrees(3.27))
    expect(edit).toMatchObject({ do: 'several', name: 'square up sheet “Windlass”' })
    const job = made(withViews(), edit)
    expect(job.sheets[0]?.straight).toBe(3.27)
    expect(job.views.map(({ grain }) => grain)).toEqual([3.27, 3.27])
  })

  it('is taken back as one edit, but for a view whose grain was changed since', () => {
    const straight = made(withViews(), straightenSheet(withViews(), 'S1', degrees(3.27)))
    const changed = made(straight, { do: 'change-view', id: 'V2', set: { grain: degrees(10) } })
    const job = made(changed, takeBackStraightening(changed, 'S1'))
    expect(job.sheets[0]?.straight).toBeUndefined()
    expect(job.views.map(({ grain }) => grain)).toEqual([undefined, 10])
  })

  it('gives a new view its grain', () => {
    const straight = made(withViews(), straightenSheet(withViews(), 'S1', degrees(3.27)))
    const { edit, id } = addView(straight, { sheet: 'S1', name: 'Plan', outline: CORNERS }, seededMint(1))
    expect(made(straight, edit).views.find((view) => view.id === id)?.grain).toBe(3.27)
  })
})
