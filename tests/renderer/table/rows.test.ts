import { describe, expect, it } from 'vitest'
import type { TableRow } from '../../../src/core/ledger/table/table.ts'
import type { ColumnName } from '../../../src/renderer/table/columns.ts'
import { columnsFor } from '../../../src/renderer/table/columns.ts'
import { compareRows } from '../../../src/renderer/table/row-order.ts'
import { rowHas } from '../../../src/renderer/table/row-search.ts'
import { sampleRow, sampleTable } from '../sample-job.ts'

const sorted = (rows: readonly TableRow[], column: ColumnName): string[] =>
  [...rows].sort((a, b) => compareRows(a, b, column)).map(({ name }) => name)

const like = (name: string, more: Partial<TableRow>): TableRow => ({ ...sampleRow('drum_od'), name, ...more })

describe('the order of the rows', () => {
  it('counts as people do: hole 2 before hole 10', () => {
    expect(sorted([like('hole_10', {}), like('hole_2', {}), like('Arm', {})], 'name')).toEqual([
      'Arm',
      'hole_2',
      'hole_10',
    ])
  })

  it('puts what is disputed or open before what is settled', () => {
    const rows = [
      like('a', { status: 'agreed' }),
      like('b', { status: 'single' }),
      like('c', { status: 'open' }),
      like('d', { status: 'disputed' }),
    ]
    expect(sorted(rows, 'status')).toEqual(['d', 'c', 'b', 'a'])
  })

  it('compares lengths with lengths and angles with angles, by size, and puts what has no value last of its kind', () => {
    const rows = [
      like('none', { value: null }),
      like('angle', { kind: 'angle', value: 1 }),
      like('large', { value: 20 }),
      like('small', { value: 2 }),
    ]
    expect(sorted(rows, 'figure')).toEqual(['small', 'large', 'none', 'angle'])
  })

  it('goes by basis in the order in which they govern the work, and without one at the end', () => {
    const rows = [
      like('a', { basis: null }),
      like('b', { basis: 'mean' }),
      like('c', { basis: 'scaled' }),
      like('d', { basis: 'printed' }),
    ]
    expect(sorted(rows, 'basis')).toEqual(['d', 'c', 'b', 'a'])
  })
})

describe('finding rows', () => {
  const found = (sought: string): string[] =>
    sampleTable.rows.filter((row) => rowHas(row, sought)).map(({ name }) => name)

  it('takes every word, in any order and case, of name, label, figure, basis and status', () => {
    expect(found('DISPUTED neck')).toEqual(['neck_height'])
    expect(found('3 5/8"')).toContain('neck_height')
    expect(found('bracket boss bore')).toEqual(['boss_bore'])
  })

  it('takes a plain dash for the minus that is written', () => {
    expect(found('11 1/2" - 0.007')).toEqual(['hood_od'])
  })

  it('keeps all rows when nothing is looked for, and none when nothing is like it', () => {
    expect(found('  ')).toHaveLength(sampleTable.rows.length)
    expect(found('rivet')).toEqual([])
  })
})

describe('the columns', () => {
  it('leave the labels out where there is no room for them', () => {
    expect(columnsFor(1200)).toContain('label')
    expect(columnsFor(850)).toEqual(['name', 'figure', 'basis', 'status', 'count', 'why'])
    expect(columnsFor(582)).toEqual(['name', 'figure', 'basis', 'status', 'count'])
  })
})
