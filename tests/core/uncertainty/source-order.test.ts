import { describe, expect, it } from 'vitest'
import { newSource, setPlacesAside, sourcesAt } from '../../../src/core/uncertainty/source.ts'

const make = (n: number): number[] => Array.from({ length: n }, () => newSource('x').order)

describe('sources at a place', () => {
  it('stand there one after the other, before those of the next place', () => {
    const first = setPlacesAside(2)
    const later = sourcesAt(first + 1, make, 3)
    const earlier = sourcesAt(first, make, 3)
    const all = [...earlier, ...later]
    expect([...all].sort((a, b) => a - b)).toEqual(all)
    expect(new Set(all).size).toBe(6)
    expect(newSource('after').order).toBeGreaterThan(Math.max(...all))
  })

  it('go on where they were after others were made within, and after those have failed', () => {
    const first = setPlacesAside(2)
    const orders = sourcesAt(
      first,
      () => {
        const before = make(2)
        const within = sourcesAt(first + 1, make, 2)
        expect(() =>
          sourcesAt(
            first + 1,
            () => {
              throw new Error('no')
            },
            0,
          ),
        ).toThrow('no')
        return { own: [...before, ...make(2)], within }
      },
      0,
    )
    const whole = sourcesAt(first, make, 4)
    expect(orders.own).toEqual(whole)
    expect(Math.min(...orders.within)).toBeGreaterThan(Math.max(...orders.own))
    // Outside, no place is left over.
    expect(Number.isInteger(newSource('after').order)).toBe(true)
  })

  it('that are too many for one place come after all others, and none twice', () => {
    const first = setPlacesAside(2)
    const many = sourcesAt(first, make, 2 ** 16 + 10)
    expect(new Set(many).size).toBe(many.length)
    expect(many.filter((order) => order >= first + 2)).toHaveLength(10)
    expect([...many].sort((a, b) => a - b)).toEqual(many)
  })
})
