import { describe, expect, it } from 'vitest'
import { pixel } from '../../../../src/core/geometry/frames.ts'
import { applyEdit, describeEdit, type Edit, readEdit } from '../../../../src/core/job/edits/edit.ts'
import { newJob } from '../../../../src/core/job/model/new-job.ts'
import type { Job, Mark } from '../../../../src/core/job/model/types.ts'
import { listed } from '../../../../src/core/job/picks/with-picks.ts'
import { readJob } from '../../../../src/core/job/read-job.ts'
import { JobError } from '../../../../src/core/job/text/job-error.ts'
import { writeJob } from '../../../../src/core/job/write-job.ts'
import { winchJob } from '../winch-job.ts'

const job = readJob(winchJob())

function refusal(edit: unknown, of: Job = job): string {
  const text = writeJob(of)
  try {
    applyEdit(of, readEdit(edit))
  } catch (error) {
    expect(error).toBeInstanceOf(JobError)
    expect(writeJob(of)).toBe(text)
    return (error as JobError).message
  }
  throw new Error('the edit was made, and should have been refused')
}

/** The job after an edit; checks that its inverse takes it back. */
function edited(edit: Edit, of: Job = job): Job {
  const applied = applyEdit(of, edit)
  const back = applyEdit(applied.job, applied.inverse)
  expect(back.job).toEqual(of)
  expect(applyEdit(back.job, back.inverse).job).toEqual(applied.job)
  return applied.job
}

const point: Mark = { id: 'M12', sheet: 's1', how: 'hand', sigma: 1, kind: 'point', pixel: pixel(3, 4) }
/** As the job keeps it. */
const kept = listed(point)

describe('adding and removing', () => {
  it('puts a mark where it is told, and at the end otherwise', () => {
    expect(edited({ do: 'add-mark', item: point }).marks.at(-1)).toEqual(kept)
    expect(edited({ do: 'add-mark', item: point, index: 2 }).marks[2]).toEqual(kept)
    expect(refusal({ do: 'add-mark', item: point, index: 99 })).toBe(
      'The mark cannot be put at index 99: there are 10, so the index is at most that.',
    )
  })

  it('shares all that it does not touch with the job before', () => {
    const next = edited({ do: 'add-mark', item: point })
    expect(next.dimensions).toBe(job.dimensions)
    expect(next.marks[0]).toBe(job.marks[0])
  })

  it('keeps nothing of the edit that could be changed from outside', () => {
    const edit: Edit = { do: 'add-mark', item: { ...point, pixel: pixel(3, 4) } as Mark }
    const next = applyEdit(job, readEdit(edit)).job
    ;(edit.item as unknown as { pixel: number[] }).pixel[0] = 99
    expect(next.marks.at(-1)).toEqual(kept)
  })

  it('refuses an id that is taken', () => {
    expect(refusal({ do: 'add-mark', item: { ...point, id: 'A' } })).toBe(
      'There is a mark "A" already: give this one another id.',
    )
  })

  it('refuses what would not be sound', () => {
    expect(refusal({ do: 'add-mark', item: { ...point, sigma: 0 } })).toBe(
      'The edit: mark "M12": sigma must be a number greater than 0.',
    )
    expect(refusal({ do: 'add-mark', item: { ...point, sheet: 's9' } })).toBe(
      'mark "M12": sheet is "s9", and the job has no such sheet.',
    )
  })

  it.each<[Edit, string]>([
    [
      { do: 'remove-mark', id: 'drum' },
      'Mark "drum" is used by figured size "R2" of view "Elevation": remove or change that first.',
    ],
    [
      { do: 'remove-sheet', id: 's2' },
      'Sheet "Details" is used by view "Pawl": remove or change that first.',
    ],
    [
      { do: 'remove-person', id: 'ada' },
      'Person Ada Quill is used by mark "A": remove or change that first.',
    ],
    [{ do: 'remove-mark', id: 'Z' }, 'There is no mark "Z": it may have been removed.'],
  ])('refuses %j, for something refers to it or it is not there', (edit, message) => {
    expect(refusal(edit)).toBe(message)
  })
})

describe('changing', () => {
  it('sets and clears fields, and leaves the others', () => {
    const next = edited({ do: 'change-mark', id: 'rim', set: { sigma: 2 }, clear: ['label'] })
    const rim = { ...job.marks[8], sigma: 2, label: undefined, picks: undefined }
    expect(next.marks[8]).toEqual({ ...rim, picks: [{ ...job.marks[8]?.picks?.[0], sigma: 2 }] })
    expect(next.marks[8]).not.toHaveProperty('label')
  })

  it('describes the job anew', () => {
    const next = edited({ do: 'describe', set: { title: 'Capstan' }, clear: ['tolerance', 'gauge'] })
    expect(next).toEqual({ ...job, title: 'Capstan', tolerance: undefined, gauge: undefined })
  })

  it('turns a point into a line', () => {
    const pixels = [pixel(0, 0), pixel(1, 1)]
    const edit: Edit = {
      do: 'change-mark',
      id: 'elsewhere',
      set: { kind: 'line', pixels },
      clear: ['pixel'],
    }
    expect(edited(edit).marks[9]).toMatchObject({ kind: 'line', pixels })
  })

  it.each<[unknown, string]>([
    [
      { do: 'change-mark', id: 'A', set: { id: 'Q' } },
      'mark "A": a change cannot touch "id"; there is an edit of its own for that.',
    ],
    [
      { do: 'change-view', id: 'v1', set: { references: [] } },
      'view "v1": a change cannot touch "references"; there is an edit of its own for that.',
    ],
    [
      { do: 'change-dimension', name: 'rake', clear: ['evidence'] },
      'dimension "rake": a change cannot touch "evidence"; there is an edit of its own for that.',
    ],
    [
      { do: 'change-evidence', dimension: 'rake', id: 'S1', set: { withdrawn: 'no' } },
      'evidence "S1": a change cannot touch "withdrawn"; there is an edit of its own for that.',
    ],
    [
      { do: 'describe', set: { marks: [] } },
      'The job: a change cannot touch "marks"; there is an edit of its own for that.',
    ],
    [{ do: 'describe', clear: ['title'] }, 'The job: title is missing.'],
    [{ do: 'change-mark', id: 'A', set: { sigma: -1 } }, 'mark "A": sigma must be a number greater than 0.'],
    [
      { do: 'change-mark', id: 'A', set: { label: 'x' }, clear: ['label'] },
      'mark "A": "label" cannot be both set and cleared.',
    ],
    [
      { do: 'change-dimension', name: 'rake', set: { kind: 'length' } },
      'evidence "S1" of dimension "rake": measure is "angle", which gives an angle, but the dimension is a length.',
    ],
    [{ do: 'describe', set: { unit: 'cm' } }, 'The job: unit must be "in" or "mm".'],
  ])('%j is refused', (edit, message) => {
    expect(refusal(edit).slice(0, message.length)).toBe(message)
  })

  it('of the unit is made when every quantity says its own', () => {
    expect(edited({ do: 'describe', set: { unit: 'mm' } }).unit).toBe('mm')
  })

  it('of the unit is made by the act that writes the last bare figure anew, and taken back with it', () => {
    const bare = edited({ do: 'describe', set: { tolerance: '±1/64' } })
    const both: Edit = {
      do: 'several',
      name: 'to millimetres',
      edits: [
        { do: 'describe', set: { tolerance: '±0.4 mm' } },
        { do: 'describe', set: { unit: 'mm' } },
      ],
    }
    expect(edited(both, bare)).toMatchObject({ unit: 'mm', tolerance: '±0.4 mm' })
  })

  it.each<[Edit, string]>([
    [
      { do: 'change-reference', view: 'v1', id: 'R2', set: { size: '7 1/2' } } as Edit,
      `because figured size "R2" of view "v1": size "7 1/2" is written without its unit and would mean another size: write their units first, as in "7 1/2 in".`,
    ],
    [
      {
        do: 'several',
        name: 'bare figures',
        edits: [
          { do: 'add-evidence', dimension: 'drum_length', item: { id: 'P8', basis: 'printed', text: '12' } },
          { do: 'describe', set: { tolerance: '±1/64' } },
        ],
      },
      'because tolerance "±1/64" and others are written without a unit (2 in all) and would mean another size',
    ],
  ])('of the unit is refused after %j, for a bare figure would mean another size', (edit, because) => {
    const bare = edited(edit)
    expect(refusal({ do: 'describe', set: { unit: 'mm' } }, bare)).toContain(
      `The unit can't be changed from in to mm, ${because}`,
    )
  })
})

describe('evidence', () => {
  const S1 = { dimension: 'drum_length', id: 'S1' }

  it('is withdrawn with a reason and reinstated, never removed', () => {
    const withdrawn = edited({ do: 'withdraw-evidence', ...S1, why: 'not to scale' })
    expect(withdrawn.dimensions[0]?.evidence[1]?.withdrawn).toBe('not to scale')
    expect(edited({ do: 'reinstate-evidence', ...S1 }, withdrawn)).toEqual(job)
    expect(refusal({ do: 'remove-evidence', ...S1 })).toBe('The edit: undo is missing.')
    expect(refusal({ do: 'withdraw-evidence', ...S1, why: '' })).toBe('The edit: why must not be empty.')
    expect(refusal({ do: 'reinstate-evidence', ...S1 })).toBe(
      'evidence "S1" of drum_length is not withdrawn, so it cannot be reinstated.',
    )
  })

  it('that says who withdrew it, and is not withdrawn, says so again once it is reinstated', () => {
    const withdrawnBy: Edit = { do: 'change-evidence', ...S1, set: { withdrawnBy: 'ada' } }
    const signed = edited(withdrawnBy)
    edited({ do: 'withdraw-evidence', ...S1, why: 'not to scale', by: 'ben' }, signed)
  })

  it('withdrawn again for another reason goes back to the first', () => {
    const next = edited({ do: 'withdraw-evidence', dimension: 'drum_length', id: 'F1', why: 'worn' })
    expect(next.dimensions[0]?.evidence[4]?.withdrawn).toBe('worn')
  })

  it('keeps its dimension', () => {
    expect(refusal({ do: 'remove-dimension', name: 'spokes' })).toBe(
      'dimension "spokes" holds evidence (F1), and evidence is kept: withdraw it instead, saying why.',
    )
  })

  it('is taken back by undoing what added it', () => {
    const evidence = { id: 'P9', basis: 'printed', text: '14 3/8"' } as const
    const { inverse } = applyEdit(job, { do: 'add-evidence', dimension: 'drum_length', item: evidence })
    expect(inverse).toEqual({ do: 'remove-evidence', dimension: 'drum_length', id: 'P9', undo: true })
    const added = { name: 'rim', label: 'Rim', kind: 'length', evidence: [evidence] } as const
    expect(applyEdit(job, { do: 'add-dimension', item: { ...added, evidence: [evidence] } }).inverse).toEqual(
      {
        do: 'remove-dimension',
        name: 'rim',
        undo: true,
      },
    )
  })

  it('is adopted by rule, by id, or by the rules again', () => {
    expect(edited({ do: 'adopt', dimension: 'drum_length', adopt: 'mean' }).dimensions[0]?.adopt).toBe('mean')
    expect(edited({ do: 'adopt', dimension: 'drum_length' }).dimensions[0]).not.toHaveProperty('adopt')
    expect(refusal({ do: 'adopt', dimension: 'drum_length', adopt: 'Q7' })).toMatch(
      /adopt is "Q7", which is neither/,
    )
  })

  it('that is derived may not run in a circle', () => {
    const item = { id: 'D1', basis: 'derived', formula: 'drum_girth / pi' } as const
    expect(refusal({ do: 'add-evidence', dimension: 'drum_od', item })).toMatch(/refers? to itself/)
  })
})

describe('renaming a dimension', () => {
  const next = edited({ do: 'rename-dimension', name: 'drum_od', to: 'cone_od' })

  it('renames it in formulas and relations too', () => {
    expect(next.dimensions[1]?.name).toBe('cone_od')
    expect(next.dimensions[2]?.evidence[0]).toMatchObject({ formula: 'pi * cone_od' })
    expect(next.relations[0]?.text).toBe('drum_girth = pi * cone_od')
  })

  it('leaves whole those whose names only contain it', () => {
    expect(next.dimensions[0]).toBe(job.dimensions[0])
  })

  it('takes along what notes are about', () => {
    expect(edited({ do: 'rename-dimension', name: 'drum_length', to: 'length_1' }).notes[0]?.about).toBe(
      'length_1',
    )
  })

  it('comes back even when a note was about the new name already', () => {
    const odd = edited({ do: 'change-note', id: 'N1', set: { about: 'cone_od' } })
    edited({ do: 'rename-dimension', name: 'drum_od', to: 'cone_od' }, odd)
  })

  it.each([
    ['rake', 'There is a dimension "rake" already: give this one another name.'],
    ['tau', 'dimension "tau" has a name that already means something in formulas: give it another.'],
    ['drum od', /^dimension "drum od" has a name that formulas cannot use/],
  ])('to %s is refused', (to, message) => {
    expect(refusal({ do: 'rename-dimension', name: 'drum_od', to })).toMatch(message)
  })

  it('is refused where a withdrawn formula means something else by the new name', () => {
    const item = {
      id: 'D2',
      basis: 'derived',
      formula: 'old_girth / 2',
      withdrawn: 'no such figure',
    } as const
    const odd = edited({ do: 'add-evidence', dimension: 'rake', item })
    expect(refusal({ do: 'rename-dimension', name: 'drum_od', to: 'old_girth' }, odd)).toBe(
      'A formula of dimension "rake" means something else by "old_girth" already: give another name.',
    )
  })
})

describe('picking again', () => {
  it('adds to the picks of a point', () => {
    const next = edited({ do: 'repeat-pick', mark: 'B', pixel: pixel(499, 19) })
    expect(next.marks[1]).toMatchObject({
      pixel: [500, 20],
      repeats: [
        [501, 20.25],
        [499, 19],
      ],
    })
    expect(edited({ do: 'repeat-pick', mark: 'A', pixel: pixel(1, 1) }).marks[0]).toMatchObject({
      repeats: [[1, 1]],
    })
  })

  it('adds a whole pick to a circle, and says in words what is no pick of it', () => {
    const pixels = [pixel(10, 0), pixel(0, 10), pixel(-10, 0.5)]
    const next = edited({ do: 'repeat-pick', mark: 'drum', pixels })
    expect(next.marks.find(({ id }) => id === 'drum')).toMatchObject({ repeats: [pixels] })
    expect(refusal({ do: 'repeat-pick', mark: 'drum', pixel: pixel(1, 1) })).toBe(
      'mark "drum" is a circle: give all of the pick as "pixels", and no "pixel".',
    )
    expect(refusal({ do: 'repeat-pick', mark: 'drum', pixels: pixels.slice(0, 2) })).toBe(
      'mark "drum" was not picked again: a circle needs 3 picked points or more, and this has 2.',
    )
    expect(refusal({ do: 'repeat-pick', mark: 'A', pixels })).toBe(
      'mark "A" is a point: give where it was picked again as one "pixel", and no "pixels".',
    )
  })

  it('keeps who picked again and when, and leaves empty what nobody said', () => {
    const once = edited({ do: 'repeat-pick', mark: 'B', pixel: pixel(499, 19), by: 'ben', at: '1911-03-09' })
    expect(once.marks[1]?.repeatedBy).toEqual([{}, { by: 'ben', at: '1911-03-09' }])
  })

  it('is taken back whole', () => {
    for (const edit of [
      { do: 'repeat-pick', mark: 'B', pixel: pixel(499, 19), by: 'ben' },
      { do: 'repeat-pick', mark: 'A', pixel: pixel(1, 1) },
    ] as const) {
      const applied = applyEdit(job, edit)
      expect(applyEdit(applied.job, applied.inverse).job).toEqual(job)
    }
  })
})

describe('several edits as one', () => {
  it('may be sound only together', () => {
    const mark = newJob('Fairlead', 'in')
    const sheet = winchJob().sheets[0]
    if (sheet === undefined) throw new Error('the winch has a sheet')
    const edits: Edit[] = [
      { do: 'add-mark', item: point },
      { do: 'add-sheet', item: sheet },
    ]
    expect(edited({ do: 'several', name: 'first picks', edits }, mark).marks).toEqual([kept])
  })

  it('are all made or none', () => {
    const edits: Edit[] = [
      { do: 'add-mark', item: point },
      { do: 'remove-mark', id: 'drum' },
    ]
    expect(refusal({ do: 'several', name: 'tidy', edits })).toMatch(
      /^Mark "drum" is used by figured size "R2"/,
    )
    expect(refusal({ do: 'several', name: 'nothing', edits: [] })).toBe(
      'The edit: edits must not be an empty list.',
    )
  })
})

describe('the name of an edit', () => {
  it.each<[Edit, string]>([
    [{ do: 'add-mark', item: point }, 'add mark M12'],
    [{ do: 'remove-mark', id: 'M12' }, 'remove mark M12'],
    [
      { do: 'change-mark', id: 'M12', set: { sigma: 2 }, clear: ['label'] },
      'change mark M12: standard uncertainty of a pick, what it marks',
    ],
    [{ do: 'adopt', dimension: 'drum_length', adopt: 'printed' }, 'adopt printed for drum_length'],
    [{ do: 'adopt', dimension: 'drum_length' }, 'adopt by the rules for drum_length'],
    [{ do: 'rename-dimension', name: 'a', to: 'b' }, 'rename a to b'],
    [
      { do: 'add-dimension', item: { name: 'a', label: '', kind: 'length', evidence: [] } },
      'add dimension a',
    ],
    [{ do: 'add-person', item: { id: 'ada', name: 'Ada Quill' } }, 'add person Ada Quill'],
    [{ do: 'withdraw-evidence', dimension: 'a', id: 'P1', why: 'x' }, 'withdraw evidence P1 of a'],
    [{ do: 'several', name: 'first picks', edits: [] }, 'first picks'],
    [{ do: 'describe', set: { unit: 'mm' } }, 'change the job: unit it is figured in'],
  ])('%j', (edit, name) => {
    expect(describeEdit(edit)).toBe(name)
  })
})

describe('what is no edit is refused', () => {
  it.each<[unknown, string]>([
    [7, 'This is not an edit: an edit is a JSON object that says what to "do".'],
    [{}, 'The edit: do is missing.'],
    [{ do: 'add-mark', item: point, colour: 'red' }, 'The edit has no field "colour".'],
    [
      JSON.parse('{"do":"describe","set":{"__proto__":{"a":1}}}'),
      'The edit: set has a field named "__proto__", which no job may have: take it out.',
    ],
    [
      { do: 'several', name: 'x', edits: [{ do: 'remove-mark' }] },
      'The edit: id of the 1st edit is missing.',
    ],
  ])('%j', (json, message) => {
    expect(() => readEdit(json)).toThrow(expect.objectContaining({ message: message }))
  })

  it('naming what an edit can do', () => {
    expect(() => readEdit({ do: 'add-makr' })).toThrow(
      expect.objectContaining({
        message: 'The edit: unknown edit "add-makr"; did you mean "add-mark"?',
      }),
    )
    expect(() => readEdit({ do: 'several', name: '', edits: [{ do: 'adpot' }] })).toThrow(
      expect.objectContaining({
        message: 'The edit: the 1st edit: unknown edit "adpot"; did you mean "adopt"?',
      }),
    )
    expect(() => readEdit({ do: 'erase' })).toThrow(
      expect.objectContaining({
        message:
          'The edit: unknown edit "erase"; the schema of an edit ("scantling schema edit") lists what it can be.',
      }),
    )
  })
})
