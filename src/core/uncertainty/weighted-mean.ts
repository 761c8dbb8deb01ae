import { CholeskyDecomposition, Matrix } from 'ml-matrix'
import { covariance, standardUncertainty } from './covariance.ts'
import { exact, propagate, type Uncertain } from './uncertain.ts'

/**
 * Generalised least-squares mean of several values of one quantity, their correlations included.
 * Where some are exact, it is the mean of those.
 * Source: weights V⁻¹1 / 1ᵀV⁻¹1 (Aitken); JCGM 100:2008 gives the propagation.
 * @param values one or more
 */
export function weightedMean(values: readonly Uncertain[]): Uncertain {
  const [first] = values
  if (first === undefined) throw new RangeError('A mean needs at least one value.')
  if (values.length === 1) return first
  const exactOnes = values.filter((v) => standardUncertainty(v) === 0)
  if (exactOnes.length > 0) {
    return exact(exactOnes.reduce((sum, v) => sum + v.value, 0) / exactOnes.length)
  }
  const v = values.map((a) => values.map((b) => covariance(a, b)))
  // Fully correlated evidence makes V singular; a part in 10¹² on its diagonal then shares the weight evenly.
  const jitter = 1e-12 * Math.max(...v.map((row, i) => row[i] ?? 0))
  for (let i = 0; i < v.length; i++) (v[i] as number[])[i] = (v[i]?.[i] ?? 0) + jitter
  const raw = new CholeskyDecomposition(new Matrix(v)).solve(Matrix.ones(v.length, 1)).to1DArray()
  const sum = raw.reduce((s, w) => s + w, 0)
  const weights = raw.map((w) => w / sum)
  const value = values.reduce((s, x, i) => s + (weights[i] ?? 0) * x.value, 0)
  return propagate(value, values, weights)
}
