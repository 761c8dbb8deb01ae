import * as elements from './elements-unchecked.ts'
import { invertSpd, timesVector } from './invert-spd.ts'

const { f64 } = elements

/** A reading, and the terms whose sum, each times its parameter, it is. */
export type Row = readonly [reading: number, terms: readonly number[]]

export interface LeastSquares {
  solution: number[]
  /** Of the normal equations, row by row: covariance of the parameters for readings of variance 1. */
  inverse: Float64Array
  /** Sum of squared residuals. */
  squares: number
}

/** Few parameters by linear least squares; null when the rows do not determine them. @param n parameters */
export function leastSquares(rows: readonly Row[], n: number): LeastSquares | null {
  const matrix = new Float64Array(n * n)
  const side = new Float64Array(n)
  for (const [reading, terms] of rows) {
    terms.forEach((term, i) => {
      side[i] = f64(side, i) + term * reading
      terms.forEach((other, j) => {
        matrix[i * n + j] = f64(matrix, i * n + j) + term * other
      })
    })
  }
  const inverse = invertSpd(matrix, n)
  if (inverse === null) return null
  const solution = timesVector(inverse, side)
  const squares = rows.reduce((sum, [reading, terms]) => {
    const left = terms.reduce((rest, term, i) => rest - term * f64(solution, i), reading)
    return sum + left * left
  }, 0)
  return { solution: [...solution], inverse, squares }
}
