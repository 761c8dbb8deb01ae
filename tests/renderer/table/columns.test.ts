import { describe, expect, it } from 'vitest'
import { columnsFor } from '../../../src/renderer/table/columns.ts'

describe('the columns', () => {
  it('leave the labels out where there is no room for them', () => {
    expect(columnsFor(1200)).toContain('label')
    expect(columnsFor(850)).toEqual(['name', 'figure', 'basis', 'status', 'count', 'why'])
    expect(columnsFor(582)).toEqual(['name', 'figure', 'basis', 'status', 'count'])
  })
})
