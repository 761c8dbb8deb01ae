import { describe, expect, it } from 'vitest'
import { beginsReading, wishOfKey } from '../../../src/renderer/table/grid-keys.ts'

const size = { rows: 41, columns: 6, page: 5 }
const from = { row: 10, column: 2 }
const wished = (key: string, ctrl = false, at = from) => wishOfKey(at, key, ctrl, size)
const moved = (...asked: Parameters<typeof wished>) => {
  const wish = wished(...asked)
  return wish?.to === 'move' ? wish.cell : null
}

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
    expect(wished('a')).toBeNull()
    expect(wished('Tab')).toBeNull()
  })

  it('changes a cell with F2, or with Enter where that can be done, and chooses its row with Space', () => {
    expect(wished('F2')).toEqual({ to: 'change' })
    expect(wished('Enter')).toEqual({ to: 'change or choose' })
    expect(wished(' ')).toEqual({ to: 'choose' })
    expect(wished('Escape')).toEqual({ to: 'choose nothing' })
  })

  it('sorts by a heading with Enter and Space', () => {
    expect(wished('Enter', false, { row: -1, column: 2 })).toEqual({ to: 'sort' })
    expect(wished(' ', false, { row: -1, column: 2 })).toEqual({ to: 'sort' })
  })
})

describe('a key on a cell of readings', () => {
  it('begins one with what a reading begins with, and with nothing else', () => {
    for (const key of ['1', '0', '.', ',', '-', '½', '⅜']) expect(beginsReading(key, false, false)).toBe(true)
    for (const key of ['?', 'a', ' ', '/', 'F2', 'Enter', '10'])
      expect(beginsReading(key, false, false)).toBe(false)
    expect(beginsReading('0', true, false)).toBe(false)
  })

  it('begins none over readings that are there', () => {
    for (const key of ['1', '3', ',', '½']) expect(beginsReading(key, false, true)).toBe(false)
  })
})
