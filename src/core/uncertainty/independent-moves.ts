import { covariance, variance } from './covariance.ts'
import type { Uncertain } from './uncertain.ts'

/** What is left of a variance only by the rounding of numbers, as a share of it. */
const ROUNDING = 1e-12

/**
 * How several values move together: independent moves of unit variance, each by how much it moves every value, that make up
 * the covariance of the values. There are no more of them than values.
 * Method: Cholesky; a value that moves with others altogether has no move of its own.
 */
export function independentMoves(values: readonly Uncertain[]): number[][] {
  const moves: number[][] = []
  values.forEach((x, i) => {
    const left = values.map((other, j) =>
      j < i ? 0 : covariance(x, other) - moves.reduce((sum, m) => sum + (m[i] ?? 0) * (m[j] ?? 0), 0),
    )
    const own = left[i] ?? 0
    if (own > ROUNDING * variance(x)) moves.push(left.map((c) => c / Math.sqrt(own)))
  })
  return moves
}
