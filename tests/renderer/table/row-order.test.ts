import { describe, expect, it } from 'vitest'
import type { TableRow } from '../../../src/core/ledger/table/table.ts'
import type { ColumnName } from '../../../src/renderer/table/columns.ts'
import { compareRows } from '../../../src/renderer/table/row-order.ts'
import { sampleRow } from '../sample-job.ts'

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

  it('puts what was read off the original before what is still to be read', () => {
    const rows = [
      like('read', { evidence: sampleRow('hole_dia').evidence, value: 2 }),
      like('not_read', { evidence: [], value: 1 }),
      like('smaller', { evidence: sampleRow('hole_dia').evidence, value: 1 }),
    ]
    expect(sorted(rows, 'original')).toEqual(['smaller', 'read', 'not_read'])
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
