import fc from 'fast-check'
import { inverse, Matrix } from 'ml-matrix'
import { describe, expect, it } from 'vitest'
import { invertSpd, timesVector } from '../../../src/core/linear-algebra/invert-spd.ts'
import { leastSquares } from '../../../src/core/linear-algebra/linear-least-squares.ts'

/** AᵀA + 1/10 for a random A. */
const positive = fc
  .integer({ min: 1, max: 7 })
  .chain((n) =>
    fc.array(fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: n, maxLength: n }), {
      minLength: n,
      maxLength: n,
    }),
  )
  .map((rows) => {
    const a = new Matrix(rows)
    return a.transpose().mmul(a).add(Matrix.eye(rows.length).mul(0.1))
  })

describe('the inverse of a symmetric positive definite matrix', () => {
  it('agrees with that of ml-matrix', () =>
    fc.assert(
      fc.property(positive, (m) => {
        const ours = invertSpd(Float64Array.from(m.to1DArray()), m.rows)
        const theirs = inverse(m).to1DArray()
        const size = Math.max(...theirs.map(Math.abs))
        theirs.forEach((value, i) => {
          expect(Math.abs((ours?.[i] ?? Number.NaN) - value)).toBeLessThan(1e-8 * size)
        })
      }),
      { seed: 5 },
    ))

  it('is none of a matrix that is singular or not positive', () => {
    expect(invertSpd(Float64Array.of(1, 2, 2, 4), 2)).toBeNull()
    expect(invertSpd(Float64Array.of(1, 3, 3, 1), 2)).toBeNull()
    expect(invertSpd(Float64Array.of(0), 1)).toBeNull()
  })
})

describe('a matrix times a vector', () => {
  it('is summed row by row', () => {
    expect([...timesVector(Float64Array.of(1, 2, 3, 4), Float64Array.of(5, 7))]).toEqual([19, 43])
  })
})

describe('linear least squares', () => {
  it('of a line has the closed form of its slope, intercept and squares', () => {
    // x 0 1 2 3, y 1 2 2 5: slope 6/5, intercept 0.7, residuals 0.3 0.1 −1.1 0.7.
    const fit = leastSquares(
      [
        [1, [1, 0]],
        [2, [1, 1]],
        [2, [1, 2]],
        [5, [1, 3]],
      ],
      2,
    )
    expect(fit?.solution[0]).toBeCloseTo(0.7, 12)
    expect(fit?.solution[1]).toBeCloseTo(1.2, 12)
    expect(fit?.squares).toBeCloseTo(1.8, 12)
    // Variance of the slope for readings of variance 1: 1/Σ(x − x̄)² = 1/5.
    expect(fit?.inverse[3]).toBeCloseTo(0.2, 12)
  })

  it('is none where the rows do not tell the parameters apart', () => {
    expect(
      leastSquares(
        [
          [1, [1, 2]],
          [2, [2, 4]],
        ],
        2,
      ),
    ).toBeNull()
  })
})
