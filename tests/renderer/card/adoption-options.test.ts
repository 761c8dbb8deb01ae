import { describe, expect, it } from 'vitest'
import { applyEdit } from '../../../src/core/job/edits/edit.ts'
import { dimensionTable } from '../../../src/core/ledger/table/dimension-table.ts'
import { adoptionOptions, BY_THE_RULES } from '../../../src/renderer/card/adoption-options.ts'
import { sampleJob, sampleRow } from '../sample-job.ts'

describe('the value that a dimension takes', () => {
  const rowAfter = (adopt: string) => {
    const { job } = applyEdit(sampleJob, { do: 'adopt', dimension: 'neck_height', adopt })
    const row = dimensionTable(job).rows.find(({ name }) => name === 'neck_height')
    if (row === undefined) throw new Error('no row')
    return row
  }
  const governing = (row: ReturnType<typeof sampleRow>): string[] =>
    row.evidence.filter((piece) => piece.governs).map(({ id }) => id)

  it('rests on the printed figure by the rules, and on what was chosen by choice', () => {
    expect(governing(sampleRow('neck_height'))).toEqual(['p1'])
    expect(governing(rowAfter('s1'))).toEqual(['s1'])
    expect(governing(rowAfter('mean'))).toEqual(['p1', 's1'])
  })

  it('does not rest on what is hard to read or withdrawn', () => {
    expect(governing(sampleRow('hood_od'))).toEqual(['s1'])
    expect(governing(sampleRow('bolt_circle'))).toEqual(['p1'])
  })

  it('can be settled by the rules, by a basis there is, by the mean, or by one piece of evidence', () => {
    expect(adoptionOptions(sampleRow('neck_height'), undefined).map(({ id }) => id)).toEqual([
      BY_THE_RULES,
      'printed',
      'scaled',
      'mean',
      'p1',
      's1',
    ])
  })

  it('still shows a choice that there is no evidence for', () => {
    expect(adoptionOptions(sampleRow('neck_od'), 'found').map(({ id }) => id)).toContain('found')
  })
})
