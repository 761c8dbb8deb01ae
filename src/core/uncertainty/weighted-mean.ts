import { CholeskyDecomposition, Matrix } from 'ml-matrix'
import { covariance, standardUncertainty } from './covariance.ts'
import { propagate, type Uncertain } from './uncertain.ts'

/**
 * Generalised least-squares mean of several values of one quantity, their correlations included.
 * Where some are exact, it is the mean of those.
 * Source: weights V⁻¹1 / 1ᵀV⁻¹1 (Aitken); JCGM 100:2008 gives the propagation.
 * @param values one or more
 */
export function weightedMean(values: readonly Uncertain[]): Uncertain {
  const weights = meanWeights(values)
  const value = values.reduce((s, x, i) => s + (weights[i] ?? 0) * x.value, 0)
  return propagate(value, values, weights)
}

/** The weights of `weightedMean`, summing to 1. */
export function meanWeights(values: readonly Uncertain[]): number[] {
  if (values.length === 0) throw new RangeError('A mean needs at least one value.')
  const exactOnes = values.map((v) => standardUncertainty(v) === 0)
  const howMany = exactOnes.filter(Boolean).length
  if (howMany > 0) return exactOnes.map((e) => (e ? 1 / howMany : 0))
  const v = values.map((a) => values.map((b) => covariance(a, b)))
  // Fully correlated evidence makes V singular; a part in 10¹² on its diagonal then shares the weight evenly.
  const jitter = 1e-12 * Math.max(...v.map((row, i) => row[i] ?? 0))
  for (let i = 0; i < v.length; i++) (v[i] as number[])[i] = (v[i]?.[i] ?? 0) + jitter
  const raw = new CholeskyDecomposition(new Matrix(v)).solve(Matrix.ones(v.length, 1)).to1DArray()
  const sum = raw.reduce((s, w) => s + w, 0)
  return raw.map((w) => w / sum)
}
