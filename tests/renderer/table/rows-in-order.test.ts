import { describe, expect, it } from 'vitest'
import type { Status } from '../../../src/core/ledger/table/table.ts'
import { nextRow } from '../../../src/renderer/table/rows-in-order.ts'

const rows = (['agreed', 'disputed', 'open', 'disputed', 'single'] satisfies Status[]).map((status, k) => ({
  name: `drum_${k}`,
  status,
}))

describe('The next row that wants something', () => {
  it('is the first from nowhere, and the last going up', () => {
    expect(nextRow(rows, null, 'disputed', 1)).toBe('drum_1')
    expect(nextRow(rows, null, 'disputed', -1)).toBe('drum_3')
  })

  it('comes after the one that is chosen, and round from the last to the first', () => {
    expect(nextRow(rows, 'drum_1', 'disputed', 1)).toBe('drum_3')
    expect(nextRow(rows, 'drum_3', 'disputed', 1)).toBe('drum_1')
    expect(nextRow(rows, 'drum_1', 'disputed', -1)).toBe('drum_3')
    expect(nextRow(rows, 'drum_0', 'open', 1)).toBe('drum_2')
  })

  it('is the same row where it is the only one, and none where there is none', () => {
    expect(nextRow(rows, 'drum_4', 'single', 1)).toBe('drum_4')
    expect(nextRow(rows.slice(0, 1), 'drum_0', 'open', 1)).toBeNull()
    expect(nextRow([], null, 'open', 1)).toBeNull()
  })
})
