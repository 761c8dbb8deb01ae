import { describe, expect, it } from 'vitest'
import { cellAfterKey } from '../../../src/renderer/table/grid-keys.ts'

const size = { rows: 41, columns: 6, page: 5 }
const from = { row: 10, column: 2 }
const moved = (key: string, ctrl = false, at = from) => cellAfterKey(at, key, ctrl, size)

describe('going through the table by keyboard', () => {
  it('moves by one with the arrows and stays inside', () => {
    expect(moved('ArrowDown')).toEqual({ row: 11, column: 2 })
    expect(moved('ArrowLeft')).toEqual({ row: 10, column: 1 })
    expect(moved('ArrowRight', false, { row: 0, column: 5 })).toEqual({ row: 0, column: 5 })
    expect(moved('ArrowDown', false, { row: 40, column: 0 })).toEqual({ row: 40, column: 0 })
  })

  it('reaches the head from the first row, and no further', () => {
    expect(moved('ArrowUp', false, { row: 0, column: 3 })).toEqual({ row: -1, column: 3 })
    expect(moved('ArrowUp', false, { row: -1, column: 3 })).toEqual({ row: -1, column: 3 })
  })

  it('goes to the ends of the row with Home and End, and of the table with Ctrl', () => {
    expect(moved('Home')).toEqual({ row: 10, column: 0 })
    expect(moved('End')).toEqual({ row: 10, column: 5 })
    expect(moved('Home', true)).toEqual({ row: 0, column: 0 })
    expect(moved('End', true)).toEqual({ row: 40, column: 5 })
  })

  it('turns pages by what is in sight, and stops at the first and the last row', () => {
    expect(moved('PageDown')).toEqual({ row: 15, column: 2 })
    expect(moved('PageUp')).toEqual({ row: 5, column: 2 })
    expect(moved('PageUp', false, { row: 2, column: 2 })).toEqual({ row: 0, column: 2 })
    expect(moved('PageDown', false, { row: 39, column: 2 })).toEqual({ row: 40, column: 2 })
  })

  it('leaves other keys to others', () => {
    expect(moved('a')).toBeNull()
    expect(moved('Tab')).toBeNull()
  })
})
