import { describe, expect, it } from 'vitest'
import { applyEdit } from '../../../src/core/job/edits/edit.ts'
import type { Job } from '../../../src/core/job/model/types.ts'
import { dimensionTable } from '../../../src/core/ledger/table/dimension-table.ts'
import { waysOf } from '../../../src/renderer/desk/scale/dimension-too.tsx'
import { type DimensionDraft, draftedDimension } from '../../../src/renderer/entering/dimension-draft.ts'
import { sentenceOf } from '../../../src/renderer/words/window-words.ts'
import { seededMint } from '../../core/job/ids/seeded-mint.ts'
import { drumJob } from '../../main/fixtures/workshop-job.ts'

const drum: Job = drumJob({ file: 'drum.png', sha256: '0'.repeat(64), page: 1, width: 400, height: 300 })
const mint = seededMint(9)
const named = { name: 'hood_od', label: 'Hood, outside', kind: null } as const

const read = (draft: DimensionDraft, job = drum) => draftedDimension(draft, job, { unit: 'in', mint })

/** The row that a draft comes to. */
function rowOf(draft: DimensionDraft, job = drum) {
  const drafted = read(draft, job)
  if (drafted === null || !('edit' in drafted)) throw new Error('nothing was made')
  const { job: after, inverse } = applyEdit(job, drafted.edit)
  expect(applyEdit(after, inverse).job).toEqual(job)
  const row = dimensionTable(after).rows.find(({ name }) => name === draft.name)
  if (row === undefined) throw new Error('it has no row')
  return row
}

const lettered = (text: string): DimensionDraft['from'] => ({
  basis: 'printed',
  text,
  legibility: 'clear',
  sheet: 'S1',
})

describe('a dimension without a pick', () => {
  it('is lettered on the sheet', () => {
    expect(rowOf({ ...named, from: lettered('2 1/2"') })).toMatchObject({
      label: 'Hood, outside',
      kind: 'length',
      value: 2.5,
      basis: 'printed',
      status: 'single',
    })
  })

  it('is by gauge, of the table that is named', () => {
    // No. 16: 1/16 in by the Act of Congress of 3 March 1893; 0.065 in by the Birmingham wire gauge.
    const by = (standard: 'us-standard-1893' | 'birmingham') =>
      rowOf({ ...named, from: { basis: 'gauge', number: '16', standard } })
    expect(by('us-standard-1893').value).toBeCloseTo(1 / 16, 9)
    expect(by('birmingham').value).toBeCloseTo(0.065, 9)
    expect(read({ ...named, from: { basis: 'gauge', number: '99', standard: 'birmingham' } })).toHaveProperty(
      'refused',
    )
  })

  it('is by formula, of the kind that the formula gives', () => {
    const by = (formula: string) => rowOf({ ...named, from: { basis: 'derived', formula } })
    for (const [formula, kind, value] of [
      ['drum_length - 1/2"', 'length', 5.5],
      ['drum_length * drum_half', 'area', 18],
      ['drum_length / drum_half', 'count', 2],
    ] as const) {
      const row = by(formula)
      expect(row).toMatchObject({ kind, basis: 'derived' })
      expect(row.value).toBeCloseTo(value, 9)
    }
  })

  it('is by readings of the original', () => {
    const from = { basis: 'found', readings: '2.51\n2.50', instrument: null } as const
    expect(rowOf({ ...named, from }).value).toBeCloseTo(2.505, 9)
    const angle = { basis: 'found', readings: '47° 30′', instrument: null } as const
    expect(rowOf({ ...named, from: angle })).toMatchObject({ kind: 'angle', value: 47.5 })
  })

  it('is nothing before anything says how large it is, and says what can not be read', () => {
    expect(read({ ...named, from: lettered(' ') })).toBeNull()
    const drafted = read({ ...named, name: '', from: { basis: 'derived', formula: 'no_such + 1"' } })
    if (drafted === null || !('refused' in drafted) || !('refused' in drafted.refused)) {
      throw new Error('it was taken')
    }
    expect(sentenceOf(drafted.refused.refused)).toMatch(/no_such/)
  })
})

describe('a figured size that is made a dimension', () => {
  const oneSize: Job = {
    ...drum,
    views: drum.views.map((view) => ({ ...view, references: view.references.slice(0, 1) })),
  }
  const begun = (job: Job) => {
    const [view] = job.views
    const reference = view?.references[0]
    const way = view === undefined || reference === undefined ? undefined : waysOf(view, reference)[0]
    if (way === undefined) throw new Error('the view has no known size')
    return way.begun
  }
  const draftOf = (job: Job): DimensionDraft => {
    const { figure = '', scaled } = begun(job)
    return { ...named, from: lettered(figure), ...(scaled === undefined ? {} : { scaled }) }
  }

  it('has its figure and its own picks', () => {
    const row = rowOf(draftOf(drum))
    expect(row).toMatchObject({ value: 12, basis: 'printed' })
    expect(row.evidence.map(({ basis }) => basis)).toEqual(['printed', 'scaled'])
  })

  it('has no second witness in a scale that is taken from it', () => {
    const row = rowOf(draftOf(oneSize), oneSize)
    expect(row.status).toBe('single')
    expect(row.evidence.some(({ value, countsWith }) => value === null || countsWith !== undefined)).toBe(
      true,
    )
  })

  it('of a rectangle gives either of its sides', () => {
    const [view] = drum.views
    if (view === undefined) throw new Error('there is no view')
    const ways = waysOf(view, {
      id: 'R9',
      kind: 'rectangle',
      marks: ['a', 'b', 'c', 'd'],
      width: '3"',
      height: '2"',
    })
    expect(ways.map(({ begun }) => [begun.figure, begun.scaled?.marks])).toEqual([
      ['3"', ['a', 'b']],
      ['2"', ['b', 'c']],
    ])
  })
})
