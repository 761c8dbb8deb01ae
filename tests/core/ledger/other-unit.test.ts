import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { Job } from '../../../src/core/job/model/types.ts'
import { readJob } from '../../../src/core/job/read-job.ts'
import { dimensionTable } from '../../../src/core/ledger/table/dimension-table.ts'
import type { Table, TableRow } from '../../../src/core/ledger/table/table.ts'
import { derived, dimension, found, printed, scaled, smallJob } from './small-job.ts'

const sample: Job = readJob(
  JSON.parse(readFileSync(new URL('../../../samples/deck-ventilator/job.json', import.meta.url), 'utf8')),
)

/** An inch is 25.4 mm exactly, by the international agreement of 1959. */
const MM = 25.4

const FACTOR: Record<string, number> = { length: MM, area: MM * MM, angle: 1, count: 1 }

const near = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-12 * Math.max(Math.abs(a), Math.abs(b))

const named = ({ rows }: Table, name: string): TableRow => {
  const row = rows.find((one) => one.name === name)
  if (row === undefined) throw new Error(`no row ${name}`)
  return row
}

describe('a table looked at in the other unit', () => {
  const inches = dimensionTable(sample)
  const millimetres = dimensionTable(sample, { unit: 'mm' })

  it('says which unit it is in', () => {
    expect([inches.unit, millimetres.unit]).toEqual(['in', 'mm'])
  })

  it('writes an area that is printed in another unit in its own', () => {
    const area = (text: string) => dimension('plate', [printed(text)], { kind: 'area', tolerance: '1 sq in' })
    const written = (text: string, unit: 'in' | 'mm') => {
      const { rows } = dimensionTable(smallJob({ dimensions: [area(text)] }), { unit })
      return [rows[0]?.written, rows[0]?.tolerance]
    }
    expect(written('8000 mm²', 'in')).toEqual(['12.4 sq in', '±1 sq in'])
    expect(written('8000 mm²', 'mm')).toEqual(['8000 mm²', '±645.16 mm²'])
  })

  it('is the same to the byte when the unit is its own', () => {
    expect(JSON.stringify(dimensionTable(sample, { unit: 'in' }))).toBe(JSON.stringify(inches))
  })

  it('gives every value and uncertainty times 25.4, areas times its square, angles and counts as they are', () => {
    for (const row of inches.rows) {
      const other = named(millimetres, row.name)
      const factor = FACTOR[row.kind] ?? Number.NaN
      for (const [a, b] of [
        [row.value, other.value],
        [row.u, other.u],
        [row.U, other.U],
      ] as const) {
        expect(near(Number(a) * factor, Number(b)), `${row.name}: ${a} and ${b}`).toBe(true)
      }
      row.evidence.forEach((evidence, i) => {
        const same = other.evidence[i]
        expect(same?.value === null, `${row.name} ${evidence.id}`).toBe(evidence.value === null)
        expect(near(Number(evidence.value) * factor, Number(same?.value))).toBe(true)
        expect(near(evidence.u * factor, Number(same?.u))).toBe(true)
      })
    }
  })

  it('decides alike: basis, status, E_n and budget do not hang on the unit', () => {
    for (const row of inches.rows) {
      const other = named(millimetres, row.name)
      expect([other.basis, other.status, other.k, other.dof]).toEqual([row.basis, row.status, row.k, row.dof])
      expect(other.evidence.map(({ en }) => en)).toEqual(row.evidence.map(({ en }) => en))
      expect(other.budget).toEqual(row.budget)
    }
  })

  it('gives the stretches of a view and its references in that unit', () => {
    inches.views.forEach((view, i) => {
      const other = millimetres.views[i]
      for (const [name, { value }] of Object.entries(view.parameters)) {
        const ratio = Number(other?.parameters[name]?.value) / value
        expect(near(ratio, MM) || near(ratio, 1), `${view.id} ${name}: ${ratio}`).toBe(true)
      }
      expect(Number(other?.parameters['along']?.value) / Number(view.parameters['along']?.value)).toBeCloseTo(
        MM,
        10,
      )
      expect([other?.chi2, other?.p, other?.scale]).toEqual([view.chi2, view.p, view.scale])
      view.references.forEach((reference, j) => {
        expect(near(reference.stated * MM, Number(other?.references[j]?.stated))).toBe(true)
      })
    })
  })

  it('gives what a relation misses by in that unit, and the same verdict', () => {
    inches.relations.forEach((relation, i) => {
      const other = millimetres.relations[i]
      expect(near(relation.misclosure * MM, Number(other?.misclosure))).toBe(true)
      expect([other?.w, other?.holds]).toEqual([relation.w, relation.holds])
    })
  })

  it('writes printed figures exactly: 3 5/8 inches are 92.075 mm', () => {
    expect(named(millimetres, 'neck_height')).toMatchObject({ value: 92.075, written: '92.075 mm' })
    expect(named(millimetres, 'neck_height').why).toMatch(
      /^The printed figure governs, but scaled 79\.\d+ mm ± \d\.\d+ mm differs from it by 12\.\d mm/,
    )
    expect(named(millimetres, 'overall_height').written).toBe('625.475 mm')
  })
})

describe('figures that are written without their unit', () => {
  it('mean the unit of the job, whatever the table is looked at in', () => {
    const job = smallJob({
      dimensions: [dimension('rim', [printed('2')]), dimension('half', [derived('rim / 2')])],
    })
    expect(named(dimensionTable(job, { unit: 'mm' }), 'rim')).toMatchObject({
      value: 50.8,
      written: '50.8 mm',
    })
    const metric = smallJob({
      unit: 'mm',
      references: [{ id: 'R1', kind: 'distance', marks: ['A', 'B'], size: '508' }],
      dimensions: [dimension('rim', [printed('92.075')]), dimension('bar', [scaled(['A', 'C'])])],
    })
    const table = dimensionTable(metric, { unit: 'in' })
    expect(named(table, 'rim')).toMatchObject({ value: 3.625, written: '3 5/8"' })
    expect(named(table, 'bar').value).toBeCloseTo(10, 12)
  })

  it('are decimals of an inch where they are no fraction of one', () => {
    const metric = smallJob({ unit: 'mm', dimensions: [dimension('rim', [printed('92.1 mm')])] })
    const { written } = named(dimensionTable(metric, { unit: 'in' }), 'rim')
    // 92.1 / 25.4 = 3.6259842…
    expect(written).toBe('3.626"')
  })

  it('have their tolerance in that unit too', () => {
    const job = smallJob({
      dimensions: [
        dimension('rim', [printed('2 ±1/32')]),
        dimension('pane', [printed('2 sq in')], { kind: 'area', tolerance: '0.5 sq in' }),
      ],
    })
    const table = dimensionTable(job, { unit: 'mm' })
    expect(named(table, 'rim').tolerance).toBe('±0.79375 mm')
    expect(named(table, 'pane')).toMatchObject({ written: '1290.32 mm²', tolerance: '±322.58 mm²' })
    expect(named(dimensionTable(job), 'pane')).toMatchObject({ written: '2 sq in', tolerance: '±0.5 sq in' })
  })

  it('are measured on the original in either unit alike', () => {
    const job = smallJob({ dimensions: [dimension('rim', [found(['2.00', '50.8 mm'])])] })
    expect(named(dimensionTable(job, { unit: 'mm' }), 'rim').value).toBeCloseTo(50.8, 12)
  })
})
