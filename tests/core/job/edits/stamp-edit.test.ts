import { describe, expect, it } from 'vitest'
import { pixel } from '../../../../src/core/geometry/frames.ts'
import { addPerson, applyEdit, type Edit, personOf, stampEdit } from '../../../../src/core/job/edits/edit.ts'
import { newJob } from '../../../../src/core/job/model/new-job.ts'
import type { Mark } from '../../../../src/core/job/model/types.ts'
import { readJob } from '../../../../src/core/job/read-job.ts'
import { winchJob } from '../winch-job.ts'

const job = readJob(winchJob())
const stamp = { by: 'ben', at: '2026-03-09T10:05:00.000Z' }
const point: Mark = { id: 'M12', sheet: 's1', how: 'hand', sigma: 1, kind: 'point', pixel: pixel(3, 4) }

describe('who and when', () => {
  it('are written into what is added', () => {
    expect(stampEdit(job, { do: 'add-mark', item: point }, stamp)).toEqual({
      do: 'add-mark',
      item: { ...point, ...stamp },
    })
    const evidence = { id: 'P9', basis: 'printed', text: '3 in' } as const
    const item = { name: 'rim', label: 'Rim', kind: 'length', evidence: [evidence] } as const
    expect(
      stampEdit(job, { do: 'add-dimension', item: { ...item, evidence: [evidence] } }, stamp),
    ).toMatchObject({ item: { evidence: [{ ...evidence, ...stamp }] } })
  })

  it('are left as they are where an item says them', () => {
    const said = { ...point, by: 'ada', at: '1911-03-09T10:05:00Z' }
    const edit: Edit = { do: 'several', name: 'picks', edits: [{ do: 'add-mark', item: said }] }
    expect(stampEdit(job, edit, stamp)).toEqual(edit)
  })

  it('are added to a mark that is changed or picked again and does not say them', () => {
    const mark = applyEdit(job, { do: 'add-mark', item: point }).job
    expect(stampEdit(mark, { do: 'change-mark', id: 'M12', set: { sigma: 2 } }, stamp)).toEqual({
      do: 'change-mark',
      id: 'M12',
      set: { sigma: 2, ...stamp },
    })
    const again = stampEdit(mark, { do: 'repeat-pick', mark: 'M12', pixel: pixel(3, 5) }, stamp)
    const picked = applyEdit(mark, again)
    expect(picked.job.marks.at(-1)).toEqual({
      ...point,
      repeats: [[3, 5]],
      repeatedBy: [stamp],
      ...stamp,
    })
    expect(applyEdit(picked.job, picked.inverse).job).toEqual(mark)
  })

  it('are not added to what says nothing of them, nor where they are cleared', () => {
    const adopt: Edit = { do: 'adopt', dimension: 'drum_length', adopt: 'mean' }
    expect(stampEdit(job, adopt, stamp)).toBe(adopt)
    const cleared = { do: 'change-note', id: 'N1', clear: ['by', 'at'] } as Edit
    expect(stampEdit(job, cleared, stamp)).toBe(cleared)
  })
})

describe('a person', () => {
  it.each([
    ['ada', 'ada'],
    ['Ada Quill', 'ada'],
    ['ADA QUILL ', 'ada'],
    ['Ben Adze', 'ben'],
  ])('called %s is %s', (who, id) => {
    expect(personOf(job, who)?.id).toBe(id)
  })

  it('who is new gets initials for an id, or the next number', () => {
    expect(personOf(job, 'Cass Bolt')).toBeUndefined()
    const item = { id: 'CB', name: 'Cass Bolt' }
    expect(addPerson(job, 'Cass Bolt')).toEqual({ id: 'CB', edit: { do: 'add-person', item } })
    const next = applyEdit(job, { do: 'add-person', item }).job
    expect(addPerson(next, 'Cora Brace').id).toBe('P1')
    expect(addPerson(next, 'cass').id).toBe('P1')
  })

  it('comes with those whom a job without a list names already', () => {
    const unlisted = { ...newJob('Pump', 'in'), sheets: winchJob().sheets, marks: [{ ...point, by: 'zoe' }] }
    const { id, edit } = addPerson(unlisted, 'Cass Bolt')
    expect(id).toBe('CB')
    expect(applyEdit(unlisted, edit).job.people).toEqual([
      { id: 'zoe', name: 'zoe' },
      { id: 'CB', name: 'Cass Bolt' },
    ])
    expect(addPerson(unlisted, 'Zoe').id).toBe('zoe')
  })
})
