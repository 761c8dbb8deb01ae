import { expect, it } from 'vitest'
import { problemOfUse } from '../../../../src/core/job/checks/uses.ts'
import { applyEdit, type Edit, reviewEdit } from '../../../../src/core/job/edits/edit.ts'
import { readJob } from '../../../../src/core/job/read-job.ts'
import { JobError } from '../../../../src/core/job/text/job-error.ts'
import { inWords } from '../../../../src/core/words/core-words.ts'
import { winchJob, winchJobOfVersion1 } from '../winch-job.ts'

const job = readJob(winchJob())
const NOTHING = {
  instruments: [],
  sheets: [],
  views: [],
  marks: [],
  dimensions: [],
  relations: [],
  notes: [],
}

it.each<[Edit, RegExp]>([
  [
    { do: 'remove-mark', id: 'drum' },
    /^Mark "drum" is used by figured size "R2" of view "Elevation": remove or change that first\.$/,
  ],
  [
    { do: 'remove-mark', id: 'rim' },
    /^Mark "rim" is used by evidence "\w+" of dimension "\w+": change that first\.$/,
  ],
  [
    { do: 'remove-view', id: 'v1' },
    /^View "Elevation" is used by evidence "S1" of dimension "drum_length": change that first\.$/,
  ],
  [
    { do: 'remove-sheet', id: 's1' },
    /^Sheet "General arrangement" is used by view "Elevation": remove or change that first\.$/,
  ],
  [
    { do: 'remove-person', id: 'ada' },
    /^Person Ada Quill is used by mark "A": remove or change that first\.$/,
  ],
  [
    { do: 'remove-instrument', id: 'cal' },
    /^Instrument "6 in dial caliper" is used by evidence "F1" of dimension/,
  ],
])('%j is refused, and what uses it is named', (edit, message) => {
  expect(() => applyEdit(job, edit)).toThrow(JobError)
  expect(() => applyEdit(job, edit)).toThrow(message)
})

it('somebody who entered nothing but themselves may go, and who entered a view stays', () => {
  const alone = { ...job, ...NOTHING, people: [{ id: 'cass', name: 'Cass', by: 'cass' }] }
  const remove: Edit = { do: 'remove-person', id: 'cass' }
  expect(() => reviewEdit(alone, remove)).not.toThrow()
  expect(applyEdit(alone, remove).job.people).toEqual([])
  const [sheet] = job.sheets
  if (sheet === undefined) throw new Error('the job has no sheet')
  const signed = { ...alone, sheets: [{ ...sheet, by: 'cass' }] }
  expect(() => reviewEdit(signed, remove)).toThrow(
    'Person Cass is used by sheet "General arrangement": remove or change that first.',
  )
})

it('a dimension stays while a formula or a relation uses it', () => {
  const girth = { id: 'D9', basis: 'derived', formula: '2 * spare' } as const
  const spare: Edit = {
    do: 'add-dimension',
    item: { name: 'spare', label: '', kind: 'length', evidence: [] },
  }
  const used = applyEdit(applyEdit(job, spare).job, { do: 'add-evidence', dimension: 'drum_od', item: girth })
  const remove: Edit = { do: 'remove-dimension', name: 'spare' }
  expect(() => applyEdit(used.job, remove)).toThrow(
    'Dimension "spare" is used by evidence "D9" of dimension "drum_od": withdraw or change that first.',
  )
  const withdrawn = applyEdit(used.job, {
    do: 'withdraw-evidence',
    dimension: 'drum_od',
    id: 'D9',
    why: 'guesswork',
  })
  const tied = applyEdit(withdrawn.job, {
    do: 'add-relation',
    item: { id: 'E9', text: 'spare = drum_od' },
  })
  expect(() => applyEdit(tied.job, remove)).toThrow(
    'Dimension "spare" is used by relation "E9": remove or change that first.',
  )
})

it('a thing may go together with what uses it', () => {
  const edits: Edit[] = [
    { do: 'remove-sheet', id: 's2' },
    { do: 'remove-view', id: 'v2' },
    { do: 'remove-mark', id: 'elsewhere' },
  ]
  expect(applyEdit(job, { do: 'several', name: 'no second sheet', edits }).job.sheets).toHaveLength(1)
})

it('the only person stays while repeated picks name them', () => {
  const alone = { ...winchJobOfVersion1(), people: [{ id: 'zoe', name: 'Zoe Awl' }] }
  const byNobody = JSON.parse(JSON.stringify(alone), (key, value) => (key === 'by' ? undefined : value))
  byNobody.marks[0] = { ...byNobody.marks[0], repeats: [[1, 2]], repeatedBy: [{ by: 'zoe' }] }
  const only = readJob(byNobody)
  expect(() => reviewEdit(only, { do: 'remove-person', id: 'zoe' })).toThrow(
    'Person Zoe Awl is used by mark "A": remove or change that first.',
  )
})

it('what is called by a label is named by its name, also while the job still has it', () => {
  const id = 'v-2222222222222'
  const renamed = readJob(JSON.parse(JSON.stringify(job).replaceAll('"v1"', `"${id}"`)))
  const problem = problemOfUse(renamed, 'view', id)
  expect(problem && inWords(problem)).toBe(
    'View "Elevation" is used by evidence "S1" of dimension "drum_length": change that first.',
  )
})
