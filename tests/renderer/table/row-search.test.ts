import { describe, expect, it } from 'vitest'
import { rowHas } from '../../../src/renderer/table/row-search.ts'
import { sampleTable } from '../sample-job.ts'

describe('finding rows', () => {
  const found = (sought: string): string[] =>
    sampleTable.rows.filter((row) => rowHas(row, sought)).map(({ name }) => name)

  it('takes every word, in any order and case, of name, label, figure, basis and status', () => {
    expect(found('DISPUTED neck')).toEqual(['neck_height'])
    expect(found('3 5/8"')).toContain('neck_height')
    expect(found('bracket boss bore')).toEqual(['boss_bore'])
  })

  it('takes a plain dash for the minus that is written', () => {
    const [row] = sampleTable.rows
    expect(row).toBeDefined()
    if (row === undefined) return
    expect(rowHas({ ...row, written: '−0.25"' }, '-0.25')).toBe(true)
    expect(rowHas({ ...row, written: '0.25"' }, '-0.25')).toBe(false)
  })

  it('takes the figure that a value is near', () => {
    expect(found('11 1/2')).toContain('hood_od')
  })

  it('keeps all rows when nothing is looked for, and none when nothing is like it', () => {
    expect(found('  ')).toHaveLength(sampleTable.rows.length)
    expect(found('rivet')).toEqual([])
  })
})
