import { Matrix, solve } from 'ml-matrix'
import { element } from '../linear-algebra/element.ts'
import { type Adjustment, adjust } from '../uncertainty/adjustment.ts'
import type { Closing } from './closings.ts'
import type { Linearised } from './linearise.ts'

/** Turns n equations of which some follow from others into as many as are independent. */
export interface Reduction {
  /** How many are independent. */
  rank: number
  /** rank × n; null where every equation is independent. */
  transform: Matrix | null
}

/**
 * Brings the equations down to those that do not follow from one another. What the figures miss by when they close is
 * shared out among them as they are finely written, and what is left is weighted as ever.
 * @param figures what each figure is uncertain by, for sharing out; any unit
 * Source: least squares with a singular covariance as the limit of figures that are ever surer (Rao 1971).
 */
export function reduction(n: number, closings: readonly Closing[], figures: readonly number[]): Reduction {
  if (closings.length === 0) return { rank: n, transform: null }
  const factors = new Matrix(closings.map((closing) => [...closing.factors]))
  const spread = factors.clone()
  figures.forEach((u, j) => {
    spread.mulColumn(j, u * u)
  })
  // F D² Fᵀ is as small as there are closings, and regular, for each has an equation of its own.
  const shares = inverseOf(factors.mmul(spread.transpose()))
  const sharedOut = Matrix.eye(n).sub(spread.transpose().mmul(shares).mmul(factors))
  const follows = new Set(closings.map(({ row }) => row))
  const kept = Array.from({ length: n }, (_, i) => i).filter((i) => !follows.has(i))
  return { rank: kept.length, transform: new Matrix(kept.map((i) => sharedOut.getRow(i))) }
}

/** One step of generalised least squares with the equations brought down; gain and weight are of all n. */
export function adjustReduced(
  { jacobian, residuals, variance }: Linearised,
  { transform }: Reduction,
  damping: number,
): Adjustment | null {
  if (transform === null) return adjust(jacobian, residuals, variance, damping)
  const back = transform.transpose()
  const right = symmetric(transform.mmul(variance).mmul(back))
  const reduced = adjust(
    transform.mmul(jacobian),
    transform.mmul(Matrix.columnVector([...residuals])).to1DArray(),
    right,
    damping,
  )
  if (reduced === null) return null
  return {
    ...reduced,
    gain: reduced.gain.mmul(transform),
    weight: back.mmul(reduced.weight).mmul(transform),
  }
}

/** Symmetric to the last bit, as the factorisation insists. */
function symmetric(matrix: Matrix): Matrix {
  for (let i = 0; i < matrix.rows; i++) for (let j = 0; j < i; j++) matrix.set(i, j, matrix.get(j, i))
  return matrix
}

/** Inverse of a small positive definite matrix. */
function inverseOf(matrix: Matrix): Matrix {
  const n = matrix.rows
  if (n === 1) return new Matrix([[1 / element(matrix.to1DArray(), 0)]])
  return solve(matrix, Matrix.eye(n))
}
