import { describe, expect, it } from 'vitest'
import { pixel } from '../../../../src/core/geometry/frames.ts'
import {
  addPerson,
  applyEdit,
  describeEdit,
  type Edit,
  makerOf,
  personOf,
  stampEdit,
} from '../../../../src/core/job/edits/edit.ts'
import { newJob } from '../../../../src/core/job/model/new-job.ts'
import type { Mark } from '../../../../src/core/job/model/types.ts'
import { readJob } from '../../../../src/core/job/read-job.ts'
import { seededMint } from '../ids/seeded-mint.ts'
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
    ).toMatchObject({ item: { ...stamp, evidence: [{ ...evidence, ...stamp }] } })
  })

  it.each<[string, Edit]>([
    ['a person', { do: 'add-person', item: { id: 'cass', name: 'Cass Bolt' } }],
    ['an instrument', { do: 'add-instrument', item: { id: 'rule', name: 'rule', resolution: '1/64"' } }],
    [
      'a sheet',
      {
        do: 'add-sheet',
        item: {
          id: 's3',
          title: 'Details',
          record: {},
          scan: { file: 'c.png', sha256: '', page: 1, width: 9, height: 9 },
        },
      },
    ],
    [
      'a view',
      { do: 'add-view', item: { id: 'v3', sheet: 's1', name: 'Plan', mapping: 'uniform', references: [] } },
    ],
    ['a dismissed figure', { do: 'dismiss-figure', sheet: 's1', item: { box: [1, 2, 3, 4] } }],
    [
      'a figured size',
      {
        do: 'add-reference',
        view: 'v1',
        item: { id: 'R9', kind: 'distance', marks: ['A', 'B'], size: '14 3/8"' },
      },
    ],
    ['a relation', { do: 'add-relation', item: { id: 'E2', text: 'drum_od = drum_length' } }],
  ])('are written into %s', (_, edit) => {
    if (!('item' in edit)) throw new TypeError('nothing is added')
    const signed = stampEdit(job, edit, stamp)
    expect(signed).toEqual({ ...edit, item: { ...edit.item, ...stamp } })
    expect(applyEdit(job, signed).job).not.toEqual(job)
    const said = { ...edit, item: { ...edit.item, by: 'ada', at: '1911-03-09T10:05:00Z' } } as Edit
    expect(stampEdit(job, said, stamp)).toEqual(said)
  })

  it('are written into the figured sizes that come with a view', () => {
    const size = { id: 'R1', kind: 'diameter', marks: ['drum'], size: '9 in' } as const
    const item = { id: 'v3', sheet: 's1', name: 'Plan', mapping: 'uniform', references: [] } as const
    const edit: Edit = { do: 'add-view', item: { ...item, references: [{ ...size, marks: ['drum'] }] } }
    expect(stampEdit(job, edit, stamp)).toMatchObject({
      item: { ...stamp, references: [{ ...size, ...stamp }] },
    })
  })

  it('are kept of an adoption, and gone with it', () => {
    const dimension = 'drum_length'
    const adopted = applyEdit(job, stampEdit(job, { do: 'adopt', dimension, adopt: 'mean' }, stamp)).job
    expect(adopted.dimensions[0]).toMatchObject({ adopt: 'mean', adoptedBy: 'ben', adoptedAt: stamp.at })
    const byTheRules = applyEdit(
      adopted,
      stampEdit(adopted, { do: 'adopt', dimension }, { ...stamp, by: 'ada' }),
    )
    expect(byTheRules.job.dimensions[0]).not.toHaveProperty('adoptedBy')
    expect(byTheRules.job.dimensions[0]).not.toHaveProperty('adoptedAt')
    expect(applyEdit(byTheRules.job, byTheRules.inverse).job).toEqual(adopted)
  })

  it('are kept of a withdrawal, and gone with it', () => {
    const target = { dimension: 'drum_length', id: 'S1' }
    const edit: Edit = { do: 'withdraw-evidence', ...target, why: 'not to scale' }
    const withdrawn = applyEdit(job, stampEdit(job, edit, stamp)).job
    expect(withdrawn.dimensions[0]?.evidence[1]).toMatchObject({
      withdrawn: 'not to scale',
      withdrawnBy: 'ben',
      withdrawnAt: stamp.at,
    })
    const reinstated = applyEdit(withdrawn, { do: 'reinstate-evidence', ...target })
    expect(reinstated.job).toEqual(job)
    expect(applyEdit(reinstated.job, reinstated.inverse).job).toEqual(withdrawn)
  })

  it('of a withdrawal are written into what is added as adopted or withdrawn', () => {
    const evidence = { id: 'P1', basis: 'printed', text: '3 in', withdrawn: 'misread' } as const
    const item = { name: 'rim', label: 'Rim', kind: 'length', adopt: 'mean', evidence: [evidence] } as const
    const edit: Edit = { do: 'add-dimension', item: { ...item, evidence: [evidence] } }
    expect(stampEdit(job, edit, stamp)).toMatchObject({
      item: {
        adoptedBy: 'ben',
        adoptedAt: stamp.at,
        evidence: [{ withdrawnBy: 'ben', withdrawnAt: stamp.at }],
      },
    })
  })

  it('are not made up for what a job had before, whoever changes it', () => {
    const edit: Edit = { do: 'change-view', id: 'v1', set: { name: 'Elevation of the drum' } }
    expect(stampEdit(job, edit, stamp)).toBe(edit)
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
      picks: [
        { pixel: [3, 4], how: 'hand', sigma: 1, ...stamp },
        { pixel: [3, 5], ...stamp },
      ],
    })
    expect(applyEdit(picked.job, picked.inverse).job).toEqual(mark)
  })

  it('of a pick are those of the sitting as well, unless it was made at another time or by somebody else', () => {
    const now = { ...stamp, sitting: 'forenoon' }
    const added = (item: Mark) => {
      const edit = stampEdit(job, { do: 'add-mark', item }, now)
      return applyEdit(job, edit).job.marks.at(-1)?.picks?.[0]
    }
    const picked = { pixel: [3, 4], how: 'hand', sigma: 1 }
    expect(added(point)).toEqual({ ...picked, ...now })
    expect(added({ ...point, by: 'ben' })).toEqual({ ...picked, ...now })
    expect(added({ ...point, by: 'ada' })).toEqual({ ...picked, ...stamp, by: 'ada' })
    expect(added({ ...point, at: '1911-03-09T10:05:00Z' })).not.toHaveProperty('sitting')
    const mark = applyEdit(job, { do: 'add-mark', item: { ...point, by: 'ada', at: stamp.at } }).job
    const again = stampEdit(mark, { do: 'repeat-pick', mark: 'M12', pixel: pixel(3, 5) }, now)
    expect(again).toEqual({ do: 'repeat-pick', mark: 'M12', pixel: [3, 5], ...now })
  })

  it('of a mark that is put somewhere else are those of whoever does it, and of what stays where it is do not change', () => {
    const said = { by: 'ada', at: '1911-03-09T10:05:00Z', sitting: 'long ago' }
    const mark = applyEdit(job, { do: 'add-mark', item: { ...point, ...said } }).job
    const moved = (
      set: object,
      by: typeof stamp & { sitting?: string } = { ...stamp, sitting: 'forenoon' },
    ) => {
      const edit = stampEdit(mark, { do: 'change-mark', id: 'M12', set } as Edit, by)
      return applyEdit(mark, edit).job.marks.at(-1)?.picks?.[0]
    }
    const place = { how: 'hand', sigma: 1, pixel: [5, 5] }
    expect(moved({ pixel: [5, 5] })).toEqual({ ...place, ...stamp, sitting: 'forenoon' })
    expect(moved({ pixel: [5, 5] }, stamp)).toEqual({ ...place, ...stamp })
    expect(moved({ pixel: [5, 5], by: 'ada' })).toMatchObject({ ...said })
    expect(moved({ pixel: [3, 4], sigma: 2 })).toMatchObject({ ...said, sigma: 2 })
    expect(moved({ label: 'rivet' })).toMatchObject(said)
  })

  it('are not added to what says nothing of them, nor where they are cleared', () => {
    const byTheRules: Edit = { do: 'adopt', dimension: 'drum_length' }
    expect(stampEdit(job, byTheRules, stamp)).toBe(byTheRules)
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

  it('who is new gets an id of their own, and is known by the name', () => {
    const mint = seededMint(1)
    expect(personOf(job, 'Cass Bolt')).toBeUndefined()
    const { id, edit } = addPerson(job, ' Cass Bolt', mint)
    expect(edit).toEqual({ do: 'add-person', item: { id, name: 'Cass Bolt' } })
    expect(describeEdit(edit)).toBe('add person Cass Bolt')
    const next = applyEdit(job, edit).job
    expect(personOf(next, 'cass bolt')?.id).toBe(id)
    expect(addPerson(next, 'Cora Brace', mint).id).not.toBe(id)
  })

  it('may come in by an edit of their own', () => {
    const themselves: Edit = { do: 'add-person', item: { id: 'cass', name: 'Cass Bolt' } }
    const edit: Edit = { do: 'several', name: 'two', edits: [{ do: 'add-mark', item: point }, themselves] }
    expect(makerOf(job, edit, 'cass bolt')?.id).toBe('cass')
    expect(makerOf(job, edit, 'Ben')?.id).toBe('ben')
    expect(makerOf(job, edit, 'Dot')).toBeUndefined()
    const signed = stampEdit(job, themselves, { ...stamp, by: 'cass' })
    const { job: next, inverse } = applyEdit(job, signed)
    expect(next.people.at(-1)).toEqual({ id: 'cass', name: 'Cass Bolt', by: 'cass', at: stamp.at })
    expect(applyEdit(next, inverse).job).toEqual(job)
  })

  it('comes with those whom a job without a list names already', () => {
    const unlisted = { ...newJob('Pump', 'in'), sheets: winchJob().sheets, marks: [{ ...point, by: 'zoe' }] }
    const { id, edit } = addPerson(unlisted, 'Cass Bolt', seededMint(1))
    expect(applyEdit(unlisted, edit).job.people).toEqual([
      { id: 'zoe', name: 'zoe' },
      { id, name: 'Cass Bolt' },
    ])
    expect(describeEdit(edit)).toBe('add people zoe, Cass Bolt')
    expect(addPerson(unlisted, 'Zoe', seededMint(1)).id).toBe('zoe')
  })
})

describe('who changed a thing last', () => {
  const ada = { by: 'ada', at: '2026-03-09T10:00:00Z' }
  const note = { id: 'N7', sheet: 's1', outline: [], text: 'A stain.' } as const
  const later = { by: 'ben', at: '2026-03-09T11:00:00Z' }
  const noted = applyEdit(job, stampEdit(job, { do: 'add-note', item: { ...note, outline: [] } }, ada)).job
  const noteIn = ({ notes }: typeof job) => notes.find(({ id }) => id === 'N7')

  it('stands beside who wrote it, and is gone when the change is taken back', () => {
    const edit: Edit = { do: 'change-note', id: 'N7', set: { text: 'A stain, lifted.' } }
    const once = applyEdit(noted, stampEdit(noted, edit, stamp))
    expect(noteIn(once.job)).toEqual({
      ...note,
      ...ada,
      text: 'A stain, lifted.',
      changedBy: 'ben',
      changedAt: stamp.at,
    })
    expect(applyEdit(once.job, once.inverse).job).toEqual(noted)
    const twice = applyEdit(
      once.job,
      stampEdit(once.job, { do: 'change-note', id: 'N7', clear: ['about'] }, later),
    )
    expect(noteIn(twice.job)).toMatchObject({ ...ada, changedBy: 'ben', changedAt: later.at })
    expect(applyEdit(twice.job, twice.inverse).job).toEqual(once.job)
  })

  it('is nobody where nobody is named, whoever changed it before', () => {
    const edit: Edit = { do: 'change-note', id: 'N7', set: { text: 'A stain, lifted.' } }
    const once = applyEdit(noted, stampEdit(noted, edit, stamp)).job
    const unnamed = stampEdit(once, edit, { by: undefined, at: later.at })
    const now = noteIn(applyEdit(once, unnamed).job)
    expect(now).toMatchObject({ ...ada, changedAt: later.at })
    expect(now).not.toHaveProperty('changedBy')
  })

  it('is not said of a change of who entered it, nor of what nobody is said to have entered', () => {
    const edit: Edit = { do: 'change-note', id: 'N7', set: { by: 'ben' } }
    expect(stampEdit(noted, edit, stamp)).toEqual(edit)
    const view: Edit = { do: 'change-view', id: 'v1', set: { name: 'Plan' } }
    expect(stampEdit(job, view, stamp)).toEqual(view)
  })

  it('is said of figured sizes, views, sheets and evidence', () => {
    const signed: typeof job = {
      ...job,
      sheets: job.sheets.map((sheet) => ({ ...sheet, ...ada })),
      views: job.views.map((view) => ({
        ...view,
        ...ada,
        references: view.references.map((size) => ({ ...size, ...ada })),
      })),
      dimensions: job.dimensions.map((one) => ({
        ...one,
        evidence: one.evidence.map((piece) => ({ ...piece, ...ada })),
      })),
    }
    const view = signed.views.find(({ references }) => references.length > 0)
    const dimension = signed.dimensions.find(({ evidence }) => evidence.length > 0)
    const [size, piece] = [view?.references[0]?.id ?? '', dimension?.evidence[0]?.id ?? '']
    const edits: Edit[] = [
      { do: 'change-sheet', id: 's1', set: { title: 'Another' } },
      { do: 'change-view', id: view?.id ?? '', set: { name: 'Another' } },
      { do: 'change-reference', view: view?.id ?? '', id: size, set: { u: '1/8"' } },
      { do: 'change-evidence', dimension: dimension?.name ?? '', id: piece, set: { note: 'Faint.' } },
    ]
    for (const edit of edits) {
      const made = applyEdit(signed, stampEdit(signed, edit, stamp))
      expect(JSON.stringify(made.job)).toContain(`"changedBy":"ben","changedAt":"${stamp.at}"`)
      expect(applyEdit(made.job, made.inverse).job).toEqual(signed)
    }
  })
})
