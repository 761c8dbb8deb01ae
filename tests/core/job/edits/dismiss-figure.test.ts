import { describe, expect, it } from 'vitest'
import { applyEdit, describeEdit, type Edit, readEdit } from '../../../../src/core/job/edits/edit.ts'
import type { DismissedFigure } from '../../../../src/core/job/model/types.ts'
import { readJob } from '../../../../src/core/job/read-job.ts'
import { winchJob } from '../winch-job.ts'

const job = readJob(winchJob())
const smudge: DismissedFigure = { box: [10, 20, 40, 15], read: { text: '14 3/8"', probability: 0.4 } }
const dismiss: Edit = { do: 'dismiss-figure', sheet: 's1', item: smudge }

const dismissedOn = (now: typeof job): unknown => now.sheets.find(({ id }) => id === 's1')?.dismissed

describe('strokes that are no figure', () => {
  it('are dismissed, shown again, and the sheet is then as it was', () => {
    const { job: after, inverse } = applyEdit(job, readEdit(dismiss))
    expect(dismissedOn(after)).toEqual([smudge])
    expect(inverse).toEqual({ do: 'recall-figure', sheet: 's1', box: smudge.box })
    expect(applyEdit(after, inverse).job).toEqual(job)
  })

  it('come back to their place among others', () => {
    const other: Edit = { do: 'dismiss-figure', sheet: 's1', item: { box: [1, 1, 1, 1] } }
    const two = applyEdit(applyEdit(job, dismiss).job, other).job
    const { job: one, inverse } = applyEdit(two, { do: 'recall-figure', sheet: 's1', box: smudge.box })
    expect(dismissedOn(one)).toEqual([{ box: [1, 1, 1, 1] }])
    expect(dismissedOn(applyEdit(one, inverse).job)).toEqual(dismissedOn(two))
  })

  it('are refused where they are dismissed already, are not, or the sheet is not there', () => {
    const { job: after } = applyEdit(job, dismiss)
    expect(() => applyEdit(after, dismiss)).toThrow(
      'These strokes are dismissed already: nothing was changed.',
    )
    expect(() => applyEdit(job, { do: 'recall-figure', sheet: 's1', box: [1, 1, 1, 1] })).toThrow(
      'These strokes are not dismissed, so there is nothing to show again.',
    )
    expect(() => applyEdit(job, { ...dismiss, sheet: 's9' })).toThrow(/There is no sheet/)
    expect(() => applyEdit(job, { ...dismiss, index: 1 })).toThrow(/cannot be put at index 1/)
    expect(() =>
      applyEdit(job, { do: 'change-sheet', id: 's1', set: { dismissed: [] } } as unknown as Edit),
    ).toThrow(/there is an edit of its own/)
  })

  it('are named by what was read in them', () => {
    const { job: after, inverse } = applyEdit(job, dismiss)
    expect(describeEdit(dismiss, job)).toMatch(/^dismiss “14 3\/8"” on sheet /)
    expect(describeEdit(inverse, after, dismiss)).toMatch(/^show “14 3\/8"” on sheet .* again$/)
    expect(describeEdit({ ...dismiss, item: { box: [1, 1, 1, 1] } }, job)).toMatch(/^dismiss a figure on /)
  })
})
