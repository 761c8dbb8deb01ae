import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  compareSquares,
  differ,
  groupedObservations,
} from '../../../src/core/uncertainty/analysis-of-variance.ts'
import { repeatedObservations } from '../../../src/core/uncertainty/type-a.ts'

const FAR = 100
const number = fc.double({ min: -FAR, max: FAR, noNaN: true })
const group = fc.array(fc.tuple(number, number), { minLength: 1, maxLength: 5 })
const groups = fc.array(group, { minLength: 2, maxLength: 5 })
const close = (a: number, b: number): void => expect(Math.abs(a - b)).toBeLessThan(1e-7 * (1 + Math.abs(b)))

/**
 * What is the root of a difference of squares may be as good as nothing beside them: its square is then what they were
 * rounded by, and the root of that much more.
 */
const closeSquares = (a: number, b: number): void =>
  expect(Math.abs(a ** 2 - b ** 2)).toBeLessThan(1e-13 * FAR ** 2)

describe('grouped observations', () => {
  it('of unequal groups have the mean of the groups, and its uncertainty by their scatter where that is the larger', () => {
    // Means 1 and 7. Within: 2 with 2 degrees of freedom. Between: 3·(1 − 2.5)² + (7 − 2.5)² = 27 with one.
    const told = groupedObservations([[[0], [1], [2]], [[7]]])
    expect(told.mean).toEqual([4])
    expect(told).toMatchObject({ within: { squares: 2, dof: 2 }, between: { squares: 27, dof: 1 }, f: 27 })
    // (1 − 4)² + (7 − 4)² over J (J − 1); beyond 1 within: (27 − 1)/1.5.
    expect(told).toMatchObject({ u: 3, dof: 1, by: 'groups', sWithin: 1 })
    close(told.sBetween ?? 0, Math.sqrt(26 / 1.5))
  })

  it('that differ less than their own scatter are as sure as all of them as one', () => {
    // Squares 20 and 0 about 0: s² = 20/3; each group counts once: (1/2 + 1/2)/4.
    const told = groupedObservations([
      [[-1], [1]],
      [[-3], [3]],
    ])
    expect(told).toMatchObject({ by: 'all', dof: 3, f: 0, sBetween: 0, share: 0.25 })
    close(told.u, Math.sqrt(20 / 3 / 4))
    expect(differ(told)).toBe(false)
  })

  it('of one each say nothing of what is within a group, and are as repeated observations', () => {
    fc.assert(
      fc.property(fc.array(number, { minLength: 2, maxLength: 6 }), (values) => {
        const told = groupedObservations(values.map((value) => [[value]]))
        const { mean, s, dof } = repeatedObservations(values)
        expect(told).toMatchObject({ f: null, p: null, sWithin: null, sBetween: null, dof })
        close(told.mean[0] ?? Number.NaN, mean)
        close(told.u, s / Math.sqrt(values.length))
      }),
    )
  })

  it('have squares within and between that add up to those about the mean of all', () => {
    fc.assert(
      fc.property(groups, (given) => {
        const told = groupedObservations(given)
        const all = given.flat()
        const mean = [0, 1].map((i) => all.reduce((sum, one) => sum + (one[i] ?? 0), 0) / all.length)
        const about = all.reduce(
          (sum, [x, y]) => sum + (x - (mean[0] ?? 0)) ** 2 + (y - (mean[1] ?? 0)) ** 2,
          0,
        )
        close(told.within.squares + told.between.squares, about)
        expect(told.within.dof + told.between.dof).toBe(2 * (all.length - 1))
        close(told.s ** 2 * 2 * (all.length - 1), about)
      }),
    )
  })

  it('are worth the same wherever they lie and in whatever order they come', () => {
    fc.assert(
      fc.property(groups, fc.tuple(number, number), (given, [dx, dy]) => {
        const told = groupedObservations(given)
        const moved = groupedObservations(
          [...given].reverse().map((own) => [...own].reverse().map(([x, y]) => [x + dx, y + dy])),
        )
        close(moved.u, told.u)
        close(moved.mean[0] ?? Number.NaN, (told.mean[0] ?? 0) + dx)
        expect(moved.sBetween === null).toBe(told.sBetween === null)
        closeSquares(moved.sBetween ?? 0, told.sBetween ?? 0)
      }),
    )
  })
})

describe('squares within and between', () => {
  it('that are nothing within tell groups apart where there is anything between them', () => {
    const within = { squares: 0, dof: 4 }
    expect(compareSquares(within, { squares: 2, dof: 1 })).toMatchObject({
      f: Number.POSITIVE_INFINITY,
      p: 0,
    })
    expect(differ(compareSquares(within, { squares: 0, dof: 1 }))).toBe(false)
  })

  it('are held against Fisher’s F: 2.12 with 9 and 40 degrees of freedom at 5 %', () => {
    // Any table of F.
    const at = (f: number) =>
      compareSquares({ squares: 40, dof: 40 }, { squares: 9 * f, dof: 9 }).p ?? Number.NaN
    expect(at(2.12)).toBeCloseTo(0.05, 3)
    expect(at(2.45)).toBeCloseTo(0.025, 3)
  })
})
