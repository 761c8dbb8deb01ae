import { CholeskyDecomposition, Matrix } from 'ml-matrix'
import { element } from '../linear-algebra/element.ts'

/** One linearised step of generalised least squares. */
export interface Adjustment {
  /** Change of the parameters. */
  step: number[]
  /** Covariance of the parameters, p × p. */
  covariance: Matrix
  /** Parameter change per residual, p × n. */
  gain: Matrix
  /** Weight matrix V⁻¹, n × n. */
  weight: Matrix
}

/**
 * Generalised least squares: minimises (r − J·step)ᵀ V⁻¹ (r − J·step).
 * @param jacobian n × p, derivative of the computed by the parameters
 * @param residual n, observed − computed
 * @param variance n × n covariance V of the residuals
 * @param damping Levenberg–Marquardt factor on the diagonal of the normal matrix; 0 for the pure step
 * @returns null when the variance or the normal matrix is singular to working precision
 * Source: Aitken 1935; the notation of JCGM 100:2008, H.3 and ISO/TS 28037.
 */
export function adjust(
  jacobian: Matrix,
  residual: readonly number[],
  variance: Matrix,
  damping: number,
): Adjustment | null {
  const n = jacobian.rows
  const p = jacobian.columns
  const errors = new CholeskyDecomposition(variance)
  if (!errors.isPositiveDefinite()) return null
  const weight = errors.solve(Matrix.eye(n))
  const jw = jacobian.transpose().mmul(weight)
  const normal = jw.mmul(jacobian)
  // Scaled to a unit diagonal, so that stretches (mm/px) and tilts (1) are resolved alike.
  const size = normal.diagonal().map((d) => Math.sqrt(d))
  if (size.some((s) => !(s > 0))) return null
  const scaled = Matrix.zeros(p, p)
  for (let i = 0; i < p; i++) {
    for (let j = i; j < p; j++) {
      const v = normal.get(i, j) / (element(size, i) * element(size, j))
      // Both halves from one number: the factorisation insists on symmetry to the last bit.
      scaled.set(i, j, i === j ? v + damping : v)
      scaled.set(j, i, i === j ? v + damping : v)
    }
  }
  const cholesky = new CholeskyDecomposition(scaled)
  if (!cholesky.isPositiveDefinite()) return null
  const inverse = cholesky.solve(Matrix.eye(p))
  for (let i = 0; i < p; i++) {
    for (let j = 0; j < p; j++) {
      inverse.set(i, j, inverse.get(i, j) / (element(size, i) * element(size, j)))
    }
  }
  const gain = inverse.mmul(jw)
  const step = gain.mmul(Matrix.columnVector([...residual])).to1DArray()
  return { step, covariance: inverse, gain, weight }
}

/** rᵀ W r. */
export function quadraticForm(weight: Matrix, r: readonly number[]): number {
  let sum = 0
  for (let i = 0; i < r.length; i++) {
    for (let j = 0; j < r.length; j++) sum += element(r, i) * weight.get(i, j) * element(r, j)
  }
  return sum
}
