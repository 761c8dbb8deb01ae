import { describe, expect, it } from 'vitest'
import { applyEdit, type Edit, readEdit } from '../../../../src/core/job/edits/edit.ts'
import type { Dimension, Job } from '../../../../src/core/job/model/types.ts'
import { simulateRow } from '../../../../src/core/ledger/simulate-row.ts'
import { dimensionTable } from '../../../../src/core/ledger/table/dimension-table.ts'
import { derived, dimension, found, rowOf, smallJob } from '../small-job.ts'
import { combined } from '../table/documented-reader.ts'
import { differsAt } from '../table/same-bits.ts'

const caliper = { id: 'I1', name: 'caliper', resolution: '0.02 mm', limit: '0.05 mm' }
const rule = { id: 'I2', name: 'rule', resolution: '0.5 mm' }

const by = (instrument: string) => (name: string, readings: string[]) =>
  dimension(name, [found(readings, 'f', { instrument })])
const [withCaliper, withRule] = [by('I1'), by('I2')]

const jobOf = (dimensions: Dimension[]): Job =>
  smallJob({ unit: 'mm', instruments: [caliper, rule], dimensions })

/** What is known of the caliper beside its scatter. */
const typeB = Math.hypot(0.02 / Math.sqrt(12), 0.05 / Math.sqrt(3))
const guess = 1.25 * 0.05

const remarksOf = (job: Job, name: string): string =>
  rowOf(job, name)
    .evidence.flatMap(({ remarks = [] }) => remarks)
    .join(' ')

describe('readings with one instrument', () => {
  const sizes = [
    withCaliper('a', ['100.00 mm', '100.10 mm']),
    withCaliper('b', ['50.00 mm', '50.06 mm', '50.03 mm']),
    withCaliper('c', ['20.00 mm']),
    withRule('d', ['200 mm', '202 mm']),
  ]
  const job = jobOf([...sizes, dimension('sum', [derived('a + b + c')])])
  const s = Math.sqrt((0.005 + 0.0018 + guess ** 2) / 3)

  it('share their scatter over all dimensions, and single readings take it', () => {
    for (const [name, n] of [
      ['a', 2],
      ['b', 3],
      ['c', 1],
    ] as const) {
      const { u, dof } = rowOf(job, name)
      const typeA = s / Math.sqrt(n)
      expect(u, name).toBeCloseTo(Math.hypot(typeA, typeB), 9)
      expect(dof, name).toBeCloseTo((3 * u ** 4) / typeA ** 4, 6)
    }
  })

  it('share the estimate of it, so that a sum knows no more than they do', () => {
    const { u, dof } = rowOf(job, 'sum')
    const part = s ** 2 * (1 / 2 + 1 / 3 + 1)
    expect(dof).toBeCloseTo((3 * u ** 4) / part ** 2, 6)
    const read = combined(dimensionTable(job), { a: 1, b: 1, c: 1 })
    expect(read.u).toBeCloseTo(u, 9)
    expect(read.dof).toBeCloseTo(dof ?? Number.NaN, 6)
  })

  it('know no less than the guess where they happen to agree', () => {
    const { u, k } = rowOf(jobOf([withCaliper('a', ['100.00 mm', '100.00 mm'])]), 'a')
    expect(u).toBeCloseTo(Math.hypot(guess / Math.SQRT2, typeB), 9)
    expect(k).toBeGreaterThan(3)
  })

  it('are one reading of what nothing tells the scatter of by a guess, which is said', () => {
    const alone = jobOf([withCaliper('a', ['100.00 mm'])])
    expect(rowOf(alone, 'a').u).toBeCloseTo(Math.hypot(guess, typeB), 9)
    expect(remarksOf(alone, 'a')).toContain('is a guess by its limit of error')
    expect(remarksOf(job, 'c')).toBe('')
    const pair = [
      found(['100.00 mm'], 'f', { instrument: 'I1' }),
      found(['100.20 mm'], 'g', { instrument: 'I1' }),
    ]
    expect(rowOf(jobOf([dimension('a', pair)]), 'a').status).toBe('agreed')
  })

  it('come out of a simulation as they stand in the table', () => {
    // 30.00, 30.06 and 30.02 mm about their mean.
    const squares = 0.0068 + 9 * (0.0056 / 3)
    const pooled = Math.sqrt((squares + guess ** 2) / 21)
    for (const name of ['b', 'sum']) {
      const many = jobOf([
        ...sizes,
        dimension('sum', [derived('a + b + c')]),
        ...Array.from({ length: 9 }, (_, i) => withCaliper(`m${i}`, ['30.00 mm', '30.06 mm', '30.02 mm'])),
      ])
      const { firstOrder, simulated } = simulateRow(many, name, { trials: 20_000, seed: 5 })
      // 3 degrees of freedom of the sizes and 18 of the others: the variance of Student's t is by so much larger.
      const typeA = name === 'b' ? 1 / 3 : 1 / 2 + 1 / 3 + 1
      const variance = ((typeA * 21) / 19) * pooled ** 2 + (firstOrder.u ** 2 - typeA * pooled ** 2)
      // Five times what a standard deviation of so many trials is off by.
      expect(Math.abs(simulated.u / Math.sqrt(variance) - 1), name).toBeLessThan(5 / Math.sqrt(2 * 20_000))
    }
  })
})

describe('readings that can not be of one size', () => {
  it.each([
    ['a lost comma', ['12.5 mm', '125 mm']],
    ['another unit', ['12.5 mm', '12.5 in']],
  ])('give no value: %s', (_, readings) => {
    for (const one of [dimension('a', [found(readings)]), withCaliper('a', readings)]) {
      const row = rowOf(jobOf([one]), 'a')
      expect(row).toMatchObject({ value: null, status: 'open' })
      expect(row.why).toMatch(/can't both be readings of one size/)
    }
  })

  it('are not those of a thin sheet that is eaten by rust', () => {
    expect(rowOf(jobOf([withCaliper('a', ['0.40 mm', '1.10 mm'])]), 'a').value).not.toBeNull()
  })
})

describe('a set that scatters far more than the rest', () => {
  const others = Array.from({ length: 6 }, (_, i) =>
    withCaliper(`m${i}`, ['30.00 mm', '30.06 mm', `30.0${i} mm`]),
  )

  it('stands by itself and says so, and leaves the others alone', () => {
    const slip = jobOf([...others, withCaliper('a', ['100.00 mm', '60.00 mm'])])
    expect(rowOf(slip, 'm0').U).toBeCloseTo(rowOf(jobOf(others), 'm0').U, 12)
    expect(rowOf(slip, 'a').U).toBeGreaterThan(200)
    expect(remarksOf(slip, 'a')).toContain('scatter much more than the others with caliper')
  })

  it('is no part of the pool, however many there are of it', () => {
    const slips = ['100.00 mm', '102.00 mm', '51.00 mm', '54.00 mm', '20.0 mm', '21.0 mm']
    const job = jobOf([
      ...others,
      ...[0, 2, 4].map((i) => withCaliper(`slip${i}`, [slips[i] ?? '', slips[i + 1] ?? ''])),
    ])
    expect(rowOf(job, 'm0').U).toBeCloseTo(rowOf(jobOf(others), 'm0').U, 12)
    for (const i of [0, 2, 4]) expect(rowOf(job, `slip${i}`).why).toContain('Is there a slip in one of them')
  })

  it('is not one that differs by a step where the rest agree', () => {
    const even = Array.from({ length: 30 }, (_, i) => withCaliper(`m${i}`, ['30.00 mm', '30.00 mm']))
    const job = jobOf([...even, withCaliper('a', ['100.00 mm', '100.02 mm'])])
    expect(remarksOf(job, 'a')).toBe('')
  })
})

describe('readings without an instrument', () => {
  it('have a coarse ± by the last place written, and say so', () => {
    const job = jobOf([dimension('a', [found(['100 mm'])]), dimension('b', [found(['50.0 mm', '51.0 mm'])])])
    expect(remarksOf(job, 'a')).toContain('No instrument is named, so its ± is a coarse one')
    // Nothing says that both were measured with the same.
    expect(rowOf(job, 'a').u).toBeCloseTo(
      Math.hypot(Math.hypot(1, 1.25) / Math.sqrt(12), 0.1 / Math.sqrt(3)),
      9,
    )
  })

  it('are no surer than with a caliper, however finely they are written and however they agree', () => {
    const named = (readings: string[]) => rowOf(jobOf([withCaliper('a', readings)]), 'a').U
    const bare = (readings: string[]) => rowOf(jobOf([dimension('a', [found(readings)])]), 'a').U
    for (const readings of [['12.55 mm'], ['12.50 mm', '12.50 mm'], ['12.55 mm', '12.50 mm', '12.52 mm']]) {
      expect(bare(readings)).toBeGreaterThan(named(readings))
    }
    // One is never much surer than two.
    expect(bare(['12.55 mm'])).toBeGreaterThan(0.9 * bare(['12.55 mm', '12.54 mm']))
  })

  it('count alike where the coarse one is not what the fine ones come to, and the slip is asked about', () => {
    const job = jobOf([dimension('a', [found(['12.50 mm', '15 mm'])])])
    const { value, U } = rowOf(job, 'a')
    expect(Math.abs((value ?? 0) - 13.75)).toBeLessThan(0.2)
    expect(U).toBeGreaterThan(2)
    expect(remarksOf(job, 'a')).toContain('Is there a slip in one of them')
  })

  it('of a fraction of an inch are read off a rule in sixteenths', () => {
    expect(rowOf(jobOf([dimension('a', [found(['1/2"'])])]), 'a').U).toBeLessThan(3)
  })

  it('of which one is coarse go by the finer ones', () => {
    const job = jobOf([dimension('a', [found(['6"', '6 1/32"', '6.02"', '153.1 mm'])])])
    const { value, u } = rowOf(job, 'a')
    expect(value).toBeGreaterThan(152.9)
    expect(value).toBeLessThan(153.2)
    expect(u).toBeLessThan(0.2)
    expect(remarksOf(job, 'a')).toContain('6", 6 1/32" are written more coarsely than the rest')
  })

  it('of a count have no ± where they agree', () => {
    const job = jobOf([dimension('a', [found(['12', '12'])], { kind: 'count' })])
    expect(rowOf(job, 'a')).toMatchObject({ value: 12, U: 0 })
    expect(remarksOf(job, 'a')).toBe('')
  })
})

describe('after a reading is added', () => {
  const job = jobOf([
    withCaliper('a', ['100.00 mm', '100.10 mm']),
    withCaliper('b', ['50.00 mm']),
    withRule('c', ['200 mm', '202 mm']),
    dimension('twice', [derived('2 * b')]),
    dimension('bare', [found(['9.0 mm'])]),
  ])
  const before = dimensionTable(job)
  const edited = (edit: object): Job => applyEdit(job, readEdit(edit as Edit)).job
  const anew = (now: Job): string[] => {
    const table = dimensionTable(now, { before })
    expect(differsAt(table, dimensionTable(now))).toBeNull()
    const kept = new Set(before.rows.map(({ evidence }) => evidence))
    return table.rows.filter(({ evidence }) => !kept.has(evidence)).map(({ name }) => name)
  }
  const more = (dimension: string, readings: string[]) => ({
    do: 'add-evidence',
    dimension,
    item: { id: 'n', basis: 'found', instrument: 'I1', readings },
  })

  it('all that was read with the instrument is worked out anew, and what rests on it', () => {
    expect(anew(edited(more('a', ['100.02 mm', '100.07 mm'])))).toEqual(['a', 'b', 'twice'])
    expect(anew(edited(more('bare', ['9.00 mm', '9.20 mm'])))).toEqual(['a', 'b', 'twice', 'bare'])
  })

  it('only its own dimension is where that says nothing of the scatter', () => {
    expect(anew(edited(more('a', ['100.02 mm'])))).toEqual(['a'])
  })

  it('what is withdrawn is no longer part of the pool', () => {
    expect(anew(edited({ do: 'withdraw-evidence', dimension: 'a', id: 'f', why: 'slipped' }))).toEqual([
      'a',
      'b',
      'twice',
    ])
  })
})
