import { describe, expect, it } from 'vitest'
import { columnsFor } from '../../../src/renderer/table/columns.ts'

describe('the columns', () => {
  it('begin with what a thing is called, and leave the reasons out first where there is little room', () => {
    expect(columnsFor(1300).slice(0, 2)).toEqual(['label', 'name'])
    expect(columnsFor(1300)).toContain('why')
    expect(columnsFor(1000)).toEqual(['label', 'name', 'figure', 'original', 'basis', 'status', 'count'])
  })

  it('let the name follow in the cell of the label where there is hardly any', () => {
    expect(columnsFor(600)).toEqual(['label', 'figure', 'original', 'basis', 'status', 'count'])
  })
})
