import { invertSpd } from './invert-spd.ts'

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
    for (let i = 0; i < n; i++) {
      const term = terms[i] as number
      side[i] = (side[i] as number) + term * reading
      for (let j = 0; j < n; j++)
        matrix[i * n + j] = (matrix[i * n + j] as number) + term * (terms[j] as number)
    }
  }
  const inverse = invertSpd(matrix, n)
  if (inverse === null) return null
  const solution = Array.from(side, (_, i) =>
    side.reduce((sum, s, j) => sum + (inverse[i * n + j] as number) * s, 0),
  )
  const squares = rows.reduce((sum, [reading, terms]) => {
    const left = terms.reduce((rest, term, i) => rest - term * (solution[i] as number), reading)
    return sum + left * left
  }, 0)
  return { solution, inverse, squares }
}
