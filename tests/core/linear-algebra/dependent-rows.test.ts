import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dependentRows } from '../../../src/core/linear-algebra/dependent-rows.ts'

const whole = fc.integer({ min: -9, max: 9 })
const isNothing = (_: unknown, length: number): boolean => length < 1e-9

describe('rows that others make up', () => {
  it('are found with how they are made up, and as many as the rank leaves', () =>
    fc.assert(
      fc.property(
        fc
          .integer({ min: 1, max: 4 })
          .chain((rank) =>
            fc.tuple(
              fc.array(fc.array(whole, { minLength: 6, maxLength: 6 }), { minLength: rank, maxLength: rank }),
              fc.array(fc.array(whole, { minLength: rank, maxLength: rank }), { minLength: 1, maxLength: 8 }),
            ),
          ),
        ([basis, mixes]) => {
          const rows = mixes.map((mix) =>
            Float64Array.from({ length: 6 }, (_, j) =>
              mix.reduce((sum, m, k) => sum + m * (basis[k]?.[j] ?? 0), 0),
            ),
          )
          const dependent = dependentRows(rows, isNothing)
          expect(rows.length - dependent.length).toBeLessThanOrEqual(basis.length)
          for (const { row, combination } of dependent) {
            expect(combination[row]).toBe(1)
            for (let j = 0; j < 6; j++) {
              const sum = rows.reduce((s, r, i) => s + (combination[i] ?? 0) * (r[j] ?? 0), 0)
              expect(Math.abs(sum)).toBeLessThan(1e-6)
            }
          }
        },
      ),
      { seed: 3 },
    ))

  it('are none where each has something of its own', () => {
    const rows = [Float64Array.of(1, 1, 0), Float64Array.of(1, 0, 1), Float64Array.of(1, 1, 1e-6)]
    expect(dependentRows(rows, isNothing)).toEqual([])
    expect(dependentRows([...rows, Float64Array.of(2, 1, 1)], isNothing)).toMatchObject([
      { row: 3, combination: [expect.closeTo(-1), expect.closeTo(-1), expect.closeTo(0), 1] },
    ])
  })
})
