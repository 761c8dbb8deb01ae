import { Matrix } from 'ml-matrix'
import { closureFit } from './closure-fit.ts'
import type { StatedSize } from './reference.ts'
import type { Solution } from './solve-mapping.ts'

/** What residuals are tested with, figures that close on themselves by what they miss by as well. */
export interface ResidualTest {
  /** W, n × n, of the equations. */
  weight: Matrix
  /** W r. */
  weighted: readonly number[]
  /** W Q_r W, with Q_r = V − J N⁻¹ Jᵀ the covariance of the residuals. */
  cofactor: Matrix
  /** Which equations rest on each size. */
  rows: readonly (readonly number[])[]
}

/** Source: Baarda, "A testing procedure for use in geodetic networks" (1968). */
export function residualTest(sizes: readonly StatedSize[], solution: Solution): ResidualTest {
  const { covariance, weight: own } = solution.adjustment
  const closing = closureFit(sizes, solution.closings, solution.residuals).weight
  const weight = closing === null ? own : own.clone().add(closing)
  const weighted = weight.mmul(Matrix.columnVector(solution.residuals)).to1DArray()
  // What closes checks the figures alone: the parameters have no part in it.
  const wj = own.mmul(solution.jacobian)
  const cofactor = weight.clone().sub(wj.mmul(covariance).mmul(wj.transpose()))
  let row = 0
  return { weight, weighted, cofactor, rows: sizes.map(({ equations }) => equations.map(() => row++)) }
}
