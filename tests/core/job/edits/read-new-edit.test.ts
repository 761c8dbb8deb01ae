import { describe, expect, it } from 'vitest'
import { applyEdit, editJsonSchema, readEdit, readNewEdit } from '../../../../src/core/job/edits/edit.ts'
import { mintedFor } from '../../../../src/core/job/ids/id-form.ts'
import { labelOf } from '../../../../src/core/job/ids/label.ts'
import type { Job } from '../../../../src/core/job/model/types.ts'
import { drumJob } from '../../../main/fixtures/workshop-job.ts'
import { seededMint } from '../ids/seeded-mint.ts'

const job = drumJob({ file: 'drum.png', sha256: '7'.repeat(64), page: 1, width: 400, height: 300, dpi: 300 })
const mint = seededMint(6)
const point = { sheet: 'S1', how: 'hand', sigma: 1, kind: 'point', pixel: [1, 2] }

function made(json: unknown, before: Job = job) {
  const { edit, given } = readNewEdit(json, before, mint)
  return { job: applyEdit(before, edit).job, given }
}

describe('an edit as a person writes it', () => {
  it('is as it stands where everything has an id', () => {
    const edit = { do: 'add-mark', item: { id: 'mine', ...point } }
    expect(readNewEdit(edit, job, mint)).toEqual({ edit: readEdit(edit), given: [] })
  })

  it('gives ids and numbers that go on from those that are there, of each kind by itself', () => {
    const { job: after, given } = made({
      do: 'several',
      name: 'all kinds',
      edits: [
        { do: 'add-person', item: { name: 'B. Brass' } },
        { do: 'add-instrument', item: { name: 'rule', resolution: '1 mm' } },
        { do: 'add-sheet', item: { title: 'Plan', record: {}, scan: job.sheets[0]?.scan } },
        { do: 'add-mark', item: point },
        {
          do: 'add-mark',
          item: {
            ...point,
            kind: 'line',
            pixels: [
              [1, 2],
              [3, 4],
            ],
            pixel: undefined,
          },
        },
        { do: 'add-reference', view: 'V1', item: { kind: 'distance', marks: ['M1', 'M4'], size: '6"' } },
        { do: 'add-evidence', dimension: 'drum_length', item: { basis: 'printed', text: '6"' } },
        { do: 'add-evidence', dimension: 'drum_length', item: { basis: 'printed', text: '6 1/4"' } },
        { do: 'add-evidence', dimension: 'drum_half', item: { basis: 'printed', text: '3"' } },
        { do: 'add-relation', item: { text: 'drum_length = 2 * drum_half' } },
        { do: 'add-note', item: { sheet: 'S1', outline: [], text: 'Worn.' } },
      ],
    })
    expect(after.people.at(-1)).not.toHaveProperty('number')
    expect(
      [
        after.people.at(-1),
        after.instruments.at(-1),
        after.sheets.at(-1),
        ...after.marks.slice(-2),
        after.views[0]?.references.at(-1),
        ...(after.dimensions[0]?.evidence.slice(-2) ?? []),
        after.dimensions[1]?.evidence.at(-1),
        after.relations.at(-1),
        after.notes.at(-1),
      ].map((item) => item && labelOf(item)),
    ).toEqual([
      'B. Brass',
      'rule',
      'sheet 2',
      'point 5',
      'line 6',
      'figured size 3',
      'printed 2',
      'printed 3',
      'printed 1',
      'relation 1',
      'note 1',
    ])
    expect(given.map(({ as }) => as)).toEqual([
      ...['person', 'instrument', 'sheet', 'mark', 'mark', 'reference'],
      ...['printed', 'printed', 'printed', 'relation', 'note'],
    ])
    expect(given.every(({ id }) => mintedFor(id) !== undefined)).toBe(true)
  })

  it('gives ids to what comes with a view or a dimension, and lets all of it be referred to before it is added', () => {
    const { job: after } = made({
      do: 'several',
      name: 'a view and what it gives',
      edits: [
        {
          do: 'add-dimension',
          item: {
            name: 'rim',
            label: 'Rim',
            kind: 'length',
            adopt: 'new:scaled',
            evidence: [
              { id: 'new:scaled', basis: 'scaled', view: 'new:v', measure: 'distance', marks: ['M1', 'M2'] },
              { basis: 'scaled', view: 'new:v', measure: 'distance', marks: ['M1', 'M3'] },
            ],
          },
        },
        {
          do: 'add-view',
          item: {
            id: 'new:v',
            sheet: 'S1',
            name: 'Plan',
            mapping: 'uniform',
            references: [{ kind: 'distance', marks: ['M1', 'M2'], size: '12"' }],
          },
        },
        { do: 'add-note', item: { sheet: 'S1', outline: [], text: 'new: is a word', about: 'new:v' } },
      ],
    })
    const [view, rim, note] = [after.views.at(-1), after.dimensions.at(-1), after.notes.at(-1)]
    expect(view?.references.map(labelOf)).toEqual(['figured size 1'])
    expect(rim?.evidence.map(labelOf)).toEqual(['scaled 1', 'scaled 2'])
    expect(rim?.adopt).toBe(rim?.evidence[0]?.id)
    expect(rim?.evidence.map((one) => one.basis === 'scaled' && one.view)).toEqual([view?.id, view?.id])
    expect(note).toMatchObject({ about: view?.id, text: 'new: is a word' })
  })

  it.each([
    [null, 'This is not an edit'],
    [{ do: 'add-mark' }, 'the new mark is missing'],
    [{ do: 'add-marks', item: point }, 'did you mean "add-mark"?'],
    [{ do: 'several', name: '', edits: 'none' }, 'edits must be a list'],
    [{ do: 'add-evidence', dimension: 'drum_half', item: { basis: 'felt' } }, 'basis must be'],
    [{ do: 'add-mark', item: { id: 3, ...point } }, 'id must be text'],
    [
      { do: 'add-view', item: { name: 'Plan', sheet: 'S1', mapping: 'uniform', references: 3 } },
      'must be a list',
    ],
    [
      JSON.parse(`${'{"do":"several","name":"","edits":['.repeat(300)}${']}'.repeat(300)}`),
      'nested too deep',
    ],
  ])('is refused as it would be with ids: %j', (json, sentence) => {
    expect(() => readNewEdit(json, job, mint)).toThrow(sentence)
  })

  it('is described so: no id is required of what is added', () => {
    const text = JSON.stringify(editJsonSchema())
    expect(text).toContain('begins with new:')
    expect(text).not.toMatch(/"required":\["id","(?:sheet|name|kind|basis|title|text)"/)
  })
})
