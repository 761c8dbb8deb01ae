import { describe, expect, it } from 'vitest'
import { applyEdit, type Edit, readEdit, reviewEdit } from '../../../../src/core/job/edits/edit.ts'
import { readJob } from '../../../../src/core/job/read-job.ts'
import { winchJob } from '../winch-job.ts'

const job = readJob(winchJob())
const review = (edit: unknown): void => reviewEdit(job, readEdit(edit))
const evidence = { id: 'P9', basis: 'printed', text: '14 3/8"' }
const point = { id: 'M12', sheet: 's1', how: 'hand', sigma: 1, kind: 'point', pixel: [3, 4] }
const rim = { name: 'rim', label: 'Rim', kind: 'length', evidence: [] }

describe('a field name that is miswritten', () => {
  it.each<[unknown, string]>([
    [
      { do: 'add-evidence', dimension: 'drum_length', item: { ...evidence, legibilty: 'doubtful' } },
      'The edit: the evidence has no field "legibilty"; did you mean "legibility"?',
    ],
    [
      { do: 'add-dimension', item: { ...rim, tolerence: '1/32' } },
      'The edit: the dimension has no field "tolerence"; did you mean "tolerance"?',
    ],
    [
      { do: 'describe', set: { titel: 'Winch' } },
      'The edit: the job has no field "titel"; did you mean "title"?',
    ],
    [
      { do: 'describe', clear: ['tolerence'] },
      'The edit: the job has no field "tolerence"; did you mean "tolerance"?',
    ],
    [
      { do: 'change-view', id: 'v1', set: { drawnscale: 0.25 } },
      'The edit: the view has no field "drawnscale"; did you mean "drawnScale"?',
    ],
    [
      { do: 'change-sheet', id: 's1', set: { record: { identifer: 'QW-17' } } },
      'The edit: "record" of the sheet has no field "identifer"; did you mean "identifier"?',
    ],
    [
      { do: 'add-dimension', item: { ...rim, evidence: [{ ...evidence, withdrwan: 'no' }] } },
      'The edit: "evidence" of the dimension has no field "withdrwan"; did you mean "withdrawn"?',
    ],
    [
      { do: 'several', name: 'two', edits: [{ do: 'add-mark', item: { ...point, lable: 'rivet' } }] },
      'The edit: the mark has no field "lable"; did you mean "label"?',
    ],
  ])('%j is refused with the one that was meant', (edit, message) => {
    expect(() => review(edit)).toThrow(expect.objectContaining({ message: message }))
  })

  it.each<unknown>([
    { do: 'add-mark', item: { ...point, colour: 'red', x: 1, id2: 'q' } },
    { do: 'describe', set: { client: 'the ferry' } },
    { do: 'change-mark', id: 'elsewhere', set: { kind: 'line', pixels: [] }, clear: ['pixel'] },
    { do: 'add-dimension', item: { ...rim, drawing: { titel: 'not ours to judge' } } },
  ])('%j passes, for its unknown fields are like none that is known', (edit) => {
    expect(() => review(edit)).not.toThrow()
  })
})

describe('when something was done', () => {
  const marked = (at: unknown): unknown => ({ do: 'add-mark', item: { ...point, at } })

  it.each(['yesterday', '9 March 1911', '2026-02-30T10:00:00Z', '2026-03-09', ''])('is not %j', (at) => {
    expect(() => review(marked(at))).toThrow(/^The edit: "at" of the mark is .* must be an ISO 8601 date/)
  })

  it.each(['2026-03-09T10:05:00Z', '2026-03-09T10:05:00.250+01:00', '2026-03-09T10:05:00'])(
    'may be %j',
    (at) => {
      expect(() => review(marked(at))).not.toThrow()
    },
  )

  it('is looked at in the evidence of a new dimension and in a change too', () => {
    const item = { ...rim, evidence: [{ ...evidence, at: 'now' }] }
    expect(() => review({ do: 'add-dimension', item })).toThrow('"at" of evidence "P9" is "now"')
    expect(() => review({ do: 'change-note', id: 'N1', set: { at: 'now' } })).toThrow('"at" of the note')
    const adopt = { do: 'adopt', dimension: 'drum_length', adopt: 'mean' }
    expect(() => review({ ...adopt, at: 'now' })).toThrow('"at" of "adopt" is "now"')
    const withdraw = { do: 'withdraw-evidence', dimension: 'drum_length', id: 'S1', why: 'creased' }
    expect(() => review({ ...withdraw, at: 'now' })).toThrow('"at" of "withdraw-evidence" is "now"')
    const adoptedAt = { do: 'change-dimension', name: 'rake', set: { adoptedAt: 'now' } }
    expect(() => review(adoptedAt)).toThrow('"adoptedAt" of the dimension is "now"')
    const size = { id: 'R1', kind: 'diameter', marks: ['drum'], size: '9 in', at: 'now' }
    const view = { id: 'v3', sheet: 's1', name: 'Plan', mapping: 'uniform', references: [size] }
    expect(() => review({ do: 'add-view', item: view })).toThrow('"at" of reference "R1" is "now"')
  })
})

describe('evidence that is withdrawn', () => {
  const target = { dimension: 'drum_length', id: 'S1' }
  const withdraw = { do: 'withdraw-evidence', ...target, why: 'not to scale' }
  const reinstate = { do: 'reinstate-evidence', ...target }
  const adopt = { do: 'adopt', dimension: 'drum_length', adopt: 'S1' }
  const several = (...edits: object[]) => ({ do: 'several', name: 'all of it', edits })
  const withdrawn = applyEdit(job, readEdit(withdraw)).job
  const reviewThen = (edit: unknown): void => reviewEdit(withdrawn, readEdit(edit))
  const ADOPTS =
    'Evidence "S1" of drum_length is withdrawn ("not to scale"), so it cannot be adopted: reinstate it first, or adopt something else.'
  const AGAIN =
    'Evidence "S1" of drum_length is withdrawn already ("not to scale"): reinstate it first to withdraw it for another reason.'

  it('is not adopted, nor withdrawn again', () => {
    expect(() => reviewThen(adopt)).toThrow(ADOPTS)
    expect(() => reviewThen({ ...withdraw, why: 'creased' })).toThrow(AGAIN)
    for (const edit of [adopt, withdraw]) expect(() => review(edit)).not.toThrow()
    for (const edit of [{ ...adopt, adopt: 'mean' }, reinstate]) expect(() => reviewThen(edit)).not.toThrow()
  })

  it('is told by what the parts of an edit before it do', () => {
    expect(() => reviewThen(several(reinstate, adopt))).not.toThrow()
    expect(() => reviewThen(several(reinstate, withdraw))).not.toThrow()
    expect(() => review(several(withdraw, adopt))).toThrow(ADOPTS)
    expect(() => review(several(withdraw, withdraw))).toThrow(AGAIN)
    const rename = { do: 'rename-dimension', name: 'drum_length', to: 'drum' }
    expect(() => reviewThen(several(rename, { ...adopt, dimension: 'drum' }))).toThrow(
      'Evidence "S1" of drum is withdrawn',
    )
    const added = { ...rim, evidence: [{ ...evidence, withdrawn: 'misread' }] }
    expect(() =>
      review(several({ do: 'add-dimension', item: added }, { ...adopt, dimension: 'rim', adopt: 'P9' })),
    ).toThrow('Evidence "P9" of rim is withdrawn')
  })

  it('may have been adopted and withdrawn again in a history', () => {
    for (const edit of [adopt, { ...withdraw, why: 'creased' }]) {
      const made = applyEdit(withdrawn, readEdit(edit))
      expect(applyEdit(made.job, made.inverse).job).toEqual(withdrawn)
    }
  })
})

it('the last of the people is not removed while work of theirs stays', () => {
  const alone = readJob({
    ...winchJob(),
    people: [{ id: 'ada', name: 'Ada Quill' }],
    marks: winchJob().marks.map(({ by, ...mark }) => (by === 'ben' ? mark : { ...mark, by: 'ada' })),
    dimensions: winchJob().dimensions.map((dimension) => ({
      ...dimension,
      evidence: dimension.evidence.map(({ by, ...one }) => one),
    })),
    notes: [],
  })
  const edit: Edit = { do: 'remove-person', id: 'ada' }
  expect(() => reviewEdit(alone, edit)).toThrow(/^Person Ada Quill is used by mark "/)
})
