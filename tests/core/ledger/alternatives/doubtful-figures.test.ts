import { describe, expect, it } from 'vitest'
import { pixel } from '../../../../src/core/geometry/frames.ts'
import type { Job } from '../../../../src/core/job/model/types.ts'
import { readJob } from '../../../../src/core/job/read-job.ts'
import { dimensionTable } from '../../../../src/core/ledger/table/dimension-table.ts'
import type { TableCandidate, TableDoubtful } from '../../../../src/core/ledger/table/table.ts'
import { derived, dimension, point, printed, scaled, smallJob } from '../small-job.ts'

const CANDIDATES = [
  { text: '10 1/8"', probability: 0.5 },
  { text: '10 3/8"', probability: 0.3 },
  { text: '16 1/8"', probability: 0.1 },
]
const doubtful = (more: object = {}, text = '10 1/8"') =>
  printed(text, 'p', { legibility: 'doubtful', candidates: CANDIDATES, ...more })

/** `drum` is drawn 10.25 in long; a band goes round it, and a box is closed by it. */
function drumJob(evidence = [doubtful(), scaled(['A', 'D'])], more: object = {}): Job {
  return smallJob({
    marks: [point('D', pixel(1637.5, 100))],
    dimensions: [
      dimension('drum', evidence, more),
      dimension('rim', [printed('1"')]),
      dimension('overall', [printed('12 3/8"')]),
      dimension('band', [derived('drum + rim')]),
      dimension('twice', [derived('2 * band')]),
      dimension('apart', [derived('2 * rim')]),
    ],
    relations: [
      { id: 'Q1', text: 'overall = drum + 2 * rim' },
      { id: 'Q2', text: 'twice = 2 * overall - 2 * rim' },
      { id: 'Q3', text: 'apart = 2 * rim' },
    ],
  })
}

function doubtfulOf(job: Job): TableDoubtful {
  const [one] = dimensionTable(job).doubtful ?? []
  if (one === undefined) throw new Error('No figure is doubtful.')
  return one
}

function candidate({ candidates }: TableDoubtful, text: string): TableCandidate {
  const one = candidates.find((c) => c.text === text)
  if (one === undefined) throw new Error(`${text} is no candidate.`)
  return one
}

describe('a figure that is hard to read', () => {
  it('has its candidates weighed by the rest of the evidence of its dimension', () => {
    const row = dimensionTable(drumJob()).rows[0]
    const { value = 0, u = 0 } = row?.evidence[1] ?? {}
    expect(value).toBeCloseTo(10.25, 9)
    const of = doubtfulOf(drumJob())
    expect(of).toMatchObject({ dimension: 'drum', evidence: 'p', besides: 1 })
    // Bayes' rule with the normal density of the scaled value, mixed with rough drawing and none at all.
    const likelihood = (inches: number): number => {
      const normal = (x: number, s: number): number => Math.exp(-((x / s) ** 2) / 2) / s
      const bySize = normal(Math.log((value as number) / inches), 0.25) / (value as number)
      return (
        0.955 * normal((value as number) - inches, u) +
        0.03 * normal((value as number) - inches, 4 * u) +
        0.015 * bySize
      )
    }
    // The 0.1 that the candidates leave is what it is read as, which is among them: it stays open.
    const ratio = (a: string, b: string): number =>
      candidate(of, a).probability / candidate(of, b).probability
    const l = [10.125, 10.375, 16.125].map(likelihood) as [number, number, number]
    expect(ratio('10 1/8"', '10 3/8"')).toBeCloseTo((0.5 * l[0]) / (0.3 * l[1]), 4)
    expect(ratio('10 1/8"', '16 1/8"') / ((0.5 * l[0]) / (0.1 * l[2]))).toBeCloseTo(1, 4)
    expect(of.candidates.reduce((sum, { probability }) => sum + probability, of.none)).toBeCloseTo(1, 12)
    expect(of.none).toBeGreaterThan(0)
    expect(of.candidates.map(({ given }) => given)).toEqual([0.5, 0.3, 0.1])
  })

  it('keeps them as they were given where there is nothing else', () => {
    const of = doubtfulOf(drumJob([doubtful()]))
    expect(of.besides).toBe(0)
    for (const { given, probability } of of.candidates) expect(probability).toBeCloseTo(given, 12)
    expect(of.none).toBeCloseTo(0.1, 12)
  })

  it('has what it was read as among them, with what they leave', () => {
    const of = doubtfulOf(drumJob([doubtful({}, '10 5/8"')]))
    expect(candidate(of, '10 5/8"').given).toBeCloseTo(0.1, 12)
    expect(of.none).toBeCloseTo(0, 12)
  })

  it('may be carried as what can be made out of it alone, which is no figure', () => {
    const of = doubtfulOf(drumJob([doubtful({}, '1? ?/8"'), scaled(['A', 'D'])]))
    expect(of.candidates.map(({ text }) => text).sort()).toEqual(CANDIDATES.map(({ text }) => text).sort())
    expect(candidate(of, '10 3/8"').value).toBe(10.375)
  })

  it('shows what each would do to the sums that it stands in, and to what is worked out from it', () => {
    const of = doubtfulOf(drumJob())
    const sums = (text: string) => candidate(of, text).relations.map(({ id, holds }) => [id, holds])
    // 12 3/8 = 10 3/8 + 2, and not 10 1/8 + 2; nothing in Q3 rests on the drum.
    expect(sums('10 3/8"')).toEqual([
      ['Q1', true],
      ['Q2', true],
    ])
    expect(sums('10 1/8"')).toEqual([
      ['Q1', false],
      ['Q2', false],
    ])
    expect(candidate(of, '10 1/8"').relations[0]?.misclosure).toBeCloseTo(0.25, 9)
    expect(candidate(of, '16 1/8"').relations[0]?.misclosure).toBeCloseTo(-5.75, 9)
    expect(candidate(of, '10 3/8"').dimensions).toMatchObject([
      { name: 'band', written: '11 3/8"', U: 0 },
      { name: 'twice', written: '22 3/4"', U: 0 },
    ])
    expect(candidate(of, '16 1/8"').dimensions).toMatchObject([
      { name: 'band', written: '17 1/8"' },
      { name: 'twice', written: '34 1/4"' },
    ])
  })

  it('comes with each candidate to just what the table says of the job with it, clear and adopted', () => {
    const of = doubtfulOf(drumJob())
    for (const { text, relations, dimensions } of of.candidates) {
      const table = dimensionTable(drumJob([printed(text, 'p'), scaled(['A', 'D'])], { adopt: 'p' }))
      expect(relations).toEqual(table.relations.slice(0, 2))
      for (const { name, value, u, status } of dimensions) {
        expect(table.rows.find((row) => row.name === name)).toMatchObject({ value, u, status })
      }
    }
  })

  it('says the mixture of all of them', () => {
    const of = doubtfulOf(drumJob([doubtful()]))
    const p = [0.5, 0.3, 0.1].map((one) => one / 0.9)
    const values = [10.125, 10.375, 16.125]
    const mean = values.reduce((sum, value, i) => sum + value * (p[i] ?? 0), 0)
    // Each is written to a sixteenth: half of that, rectangular (JCGM 100:2008, 4.3.7).
    const own = 1 / 32 / Math.sqrt(3)
    const square = values.reduce((sum, value, i) => sum + (p[i] ?? 0) * ((value - mean) ** 2 + own ** 2), 0)
    expect(of.mixture?.value).toBeCloseTo(mean, 9)
    expect(of.mixture?.u).toBeCloseTo(Math.sqrt(square), 6)
  })

  it('is not adopted by itself, and keeps its candidates once a person has chosen', () => {
    const job = drumJob()
    expect(dimensionTable(job).rows[0]).toMatchObject({ basis: 'scaled' })
    const chosen = drumJob(undefined, { adopt: 'p' })
    expect(dimensionTable(chosen).rows[0]).toMatchObject({ basis: 'printed', value: 10.125 })
    const of = doubtfulOf(chosen)
    expect(of.candidates.map(({ given }) => given)).toEqual([0.5, 0.3, 0.1])
    expect(of.candidates).toEqual(doubtfulOf(job).candidates)
  })

  it('says nothing of one that is clear, withdrawn or without candidates', () => {
    for (const more of [{ legibility: 'clear' }, { withdrawn: 'another dimension' }, { candidates: [] }]) {
      expect(dimensionTable(drumJob([doubtful(more)])).doubtful).toBeUndefined()
    }
  })

  it('gives no probability to what is no figure of its kind, where anything speaks beside it', () => {
    const candidates = [...CANDIDATES, { text: 'illegible', probability: 0.1 }]
    const of = doubtfulOf(drumJob([doubtful({ candidates }), scaled(['A', 'D'])]))
    expect(candidate(of, 'illegible')).toMatchObject({
      value: null,
      probability: 0,
      relations: [],
      dimensions: [],
    })
  })
})

describe('after an edit', () => {
  it('what could be is the same as if all was worked out anew', () => {
    let job = readJob(drumJob())
    let table = dimensionTable(job)
    const next: Job = {
      ...job,
      dimensions: job.dimensions.map((one) =>
        one.name === 'rim' ? { ...one, evidence: [printed('1 1/8"')] } : one,
      ),
    }
    const before = table
    table = dimensionTable(next, { before })
    expect(table.doubtful).toEqual(dimensionTable(next).doubtful)
    expect(table.doubtful).not.toEqual(before.doubtful)
    // What does not touch it leaves it as it is.
    job = {
      ...next,
      dimensions: [...next.dimensions, dimension('other', [printed('3 1/8"')])],
    }
    const after = dimensionTable(job, { before: table })
    expect(after.doubtful?.[0]).toBe(table.doubtful?.[0])
  })
})
