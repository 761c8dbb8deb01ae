import { describe, expect, it } from 'vitest'
import { afterNoun, called, itemCalled, labelOf, labelOfId } from '../../../../src/core/job/ids/label.ts'
import { labelIn, labelsOfJob } from '../../../../src/core/job/ids/labels-of-job.ts'
import { seededMint } from './seeded-mint.ts'

const mint = seededMint(4)

describe('people call a thing', () => {
  it.each([
    [{ id: mint('mark'), number: 12, kind: 'circle' }, 'circle 12'],
    [{ id: mint('mark'), number: 3, kind: 'point' }, 'point 3'],
    [{ id: mint('reference'), number: 2, kind: 'distance' }, 'figured size 2'],
    [{ id: mint('evidence'), number: 1, basis: 'scaled' }, 'scaled 1'],
    [{ id: mint('view'), number: 4, name: 'Elevation' }, 'view 4'],
    [{ id: mint('sheet'), number: 2 }, 'sheet 2'],
    [{ id: mint('relation'), number: 6 }, 'relation 6'],
    [{ id: mint('note'), number: 9 }, 'note 9'],
    [{ id: mint('person'), name: 'A. Rivet' }, 'A. Rivet'],
    [{ id: mint('instrument'), name: '6 in dial caliper' }, '6 in dial caliper'],
    [{ id: 'M12', kind: 'circle' }, 'M12'],
    [{ id: 'bore', number: 3, kind: 'circle' }, 'bore'],
    [{ id: 'AR', name: 'A. Rivet' }, 'AR'],
  ])('of which the job has %o: %s', (item, label) => {
    expect(labelOf(item)).toBe(label)
  })

  it('by the end of its id where it has no number, and never by the whole of it', () => {
    const id = mint('mark')
    expect(labelOf({ id, kind: 'line' })).toBe(`line ${id.slice(-4)}`)
    expect(labelOfId(id)).toBe(`mark ${id.slice(-4)}`)
    expect(labelOfId('M12')).toBe('M12')
  })

  it('with its noun once', () => {
    const circle = { id: mint('mark'), number: 12, kind: 'circle' }
    expect(called('mark', circle)).toBe('circle 12')
    expect(called('mark', { id: 'M12', kind: 'circle' })).toBe('mark M12')
    expect(called('person', { id: mint('person'), name: 'A. Rivet' })).toBe('person A. Rivet')
    expect(afterNoun(circle)).toBe('12')
    expect(afterNoun({ id: 'M12' })).toBe('M12')
  })

  it('and mean the one that goes by it alone', () => {
    const [first, second, another] = ['one', 'two', 'three'].map((title, i) => ({
      id: mint('sheet'),
      number: i === 2 ? 2 : i + 1,
      title,
    }))
    if (first === undefined || second === undefined || another === undefined) throw new Error('three')
    const old = { id: 'S7', title: 'old' }
    expect(itemCalled([first, second, old], 'sheet 2')).toBe(second)
    expect(itemCalled([first, second, old], '1')).toBe(first)
    expect(itemCalled([first, second, old], second.id)).toBe(second)
    expect(itemCalled([first, second, old], 'S7')).toBe(old)
    expect(itemCalled([first, second, another], '2')).toBeUndefined()
    expect(itemCalled([first], 'sheet 3')).toBeUndefined()
  })
})

describe('the labels of a job', () => {
  const person = { id: mint('person'), name: 'A. Rivet' }
  const reference = { id: mint('reference'), number: 1 }
  const evidence = { id: mint('evidence'), number: 2, basis: 'printed' }
  const mark = { id: mint('mark'), number: 12, kind: 'circle' }
  const job = {
    people: [person],
    instruments: [],
    sheets: [],
    views: [{ id: 'V1', references: [reference] }],
    marks: [mark, { id: 'M3', kind: 'line' }],
    dimensions: [{ evidence: [evidence, { id: 'p1', basis: 'printed' }] }],
    relations: [],
    notes: [],
  }
  const gone = mint('note')

  it.each([
    ['one by one', (id: string) => labelIn(job, id)],
    ['all at once', labelsOfJob(job)],
  ])('are looked up %s', (_, labels) => {
    const ids = [person.id, reference.id, evidence.id, mark.id, 'M3', 'V1', gone]
    expect(ids.map((id) => labels(id))).toEqual([
      'A. Rivet',
      'figured size 1',
      'printed 2',
      'circle 12',
      'M3',
      'V1',
      `note ${gone.slice(-4)}`,
    ])
  })
})
