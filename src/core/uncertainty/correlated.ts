import { EigenvalueDecomposition, Matrix } from 'ml-matrix'
import { KNOWN, newSource, type VarianceEstimate } from './source.ts'
import { fromTerms, type Uncertain } from './uncertain.ts'

/**
 * Uncertain numbers with a given covariance matrix: each independent part of it becomes a source.
 * @param values n numbers
 * @param covariance n × n, symmetric, not negative
 * @param label what the sources are called in a budget
 * @throws RangeError when the matrix has a clearly negative eigenvalue
 */
export function correlatedNumbers(
  values: readonly number[],
  covariance: readonly (readonly number[])[],
  label: string,
  estimate: VarianceEstimate = KNOWN,
): Uncertain[] {
  // Scaled to correlations first, so that quantities of very different size are resolved alike.
  const sd = values.map((_, i) => Math.sqrt(Math.max(covariance[i]?.[i] ?? 0, 0)))
  const r = values.map((_, i) =>
    values.map((_, j) => {
      const product = (sd[i] ?? 0) * (sd[j] ?? 0)
      return product === 0 ? (i === j ? 1 : 0) : (covariance[i]?.[j] ?? 0) / product
    }),
  )
  const { realEigenvalues, eigenvectorMatrix } = new EigenvalueDecomposition(new Matrix(r), {
    assumeSymmetric: true,
  })
  const lowest = Math.min(...realEigenvalues)
  if (lowest < -1e-6) {
    throw new RangeError(`This is not a covariance matrix: its correlations have the eigenvalue ${lowest}.`)
  }
  const sources = values.map(() => newSource(label, estimate))
  return values.map((value, i) =>
    fromTerms(
      value,
      sources,
      realEigenvalues.map((l, j) => (sd[i] ?? 0) * eigenvectorMatrix.get(i, j) * Math.sqrt(Math.max(l, 0))),
    ),
  )
}
