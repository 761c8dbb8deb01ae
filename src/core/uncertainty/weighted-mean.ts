import { CholeskyDecomposition, Matrix } from 'ml-matrix'
import { dot } from '../linear-algebra/dot.ts'
import { element } from '../linear-algebra/element.ts'
import { type Arithmetic, weightedSum } from './arithmetic.ts'
import { covariance, standardUncertainty } from './covariance.ts'
import { chiSquareExceeds } from './distributions.ts'
import type { Source } from './source.ts'
import { exact, measured, type Uncertain } from './uncertain.ts'

/** How several values of one quantity are brought to their mean. */
export interface Weighting {
  /** None negative, summing to 1, so that the mean lies among the values. */
  weights: readonly number[]
  /** What is added because the values do not agree within their uncertainties, mean 0; exact when they do. */
  excess: Uncertain
}

const DISAGREE_BELOW = 0.05

/**
 * Generalised least-squares mean of several values of one quantity, with all that they share.
 * Where some are exact, it is the mean of those. Where they disagree (p < 0.05), the standard error of their scatter
 * is added, worth n − 1 degrees of freedom.
 * Source: weights V⁻¹1 / 1ᵀV⁻¹1 (Aitken 1935); JCGM 100:2008 gives the propagation.
 * @param values one or more
 */
export function weighting(values: readonly Uncertain[]): Weighting {
  const weights = meanWeights(values)
  return { weights, excess: disagreement(values, weights) }
}

/**
 * The mean by a weighting: of the values that it was made for, or of what a draw makes of them.
 * @param value the i-th of them
 */
export function weightedMean<N>(
  { weights, excess }: Weighting,
  arithmetic: Arithmetic<N>,
  value: (i: number) => N,
): N {
  const widening = arithmetic.of(excess)
  const values = weights.map((_, i) => value(i))
  return arithmetic.add(weightedSum(arithmetic, values, weights), widening)
}

function meanWeights(values: readonly Uncertain[]): number[] {
  if (values.length === 0) throw new RangeError('A mean needs at least one value.')
  const exactOnes = values.map((v) => standardUncertainty(v) === 0)
  const howMany = exactOnes.filter(Boolean).length
  if (howMany > 0) return exactOnes.map((e) => (e ? 1 / howMany : 0))
  const all = values.map((_, i) => i)
  const plain = aitken(covariances(values), all)
  return plain.every((w) => w >= 0) ? plain : withoutNegative(covariances(atCommonSize(values)))
}

/** A value that its correlations would give a negative weight adds nothing to the others: it is left out. */
function withoutNegative(v: readonly number[][]): number[] {
  let kept = v.map((_, i) => i)
  for (;;) {
    const raw = aitken(v, kept)
    const negative = kept.filter((_, k) => element(raw, k) < 0)
    if (negative.length === 0) {
      const weights = v.map(() => 0)
      kept.forEach((i, k) => {
        weights[i] = element(raw, k)
      })
      return weights
    }
    kept = kept.filter((i) => !negative.includes(i))
  }
}

/**
 * The values with what they share taken as if all were of the same size. A shared scale acts in proportion to each
 * value, and least squares would take the difference for knowledge and put the mean below all of them: the puzzle
 * that is named after Peelle (1987).
 */
function atCommonSize(values: readonly Uncertain[]): Uncertain[] {
  const mean = values.reduce((s, x) => s + x.value, 0) / values.length
  if (!values.every((x) => x.value * mean > 0)) return [...values]
  const uses = new Map<Source, number>()
  for (const x of values) for (const s of x.sources) uses.set(s, (uses.get(s) ?? 0) + 1)
  return values.map((x) => ({
    ...x,
    coefficients: x.coefficients.map((c, i) =>
      (uses.get(element(x.sources, i)) ?? 0) > 1 ? (c * mean) / x.value : c,
    ),
  }))
}

function covariances(values: readonly Uncertain[]): number[][] {
  const v = values.map((a) => values.map((b) => covariance(a, b)))
  // Fully correlated evidence makes V singular; a part in 10¹² on its diagonal then shares the weight evenly.
  const jitter = 1e-12 * Math.max(...v.map(element))
  return v.map((row, i) => row.map((c, j) => (i === j ? c + jitter : c)))
}

function aitken(v: readonly number[][], kept: readonly number[]): number[] {
  const raw = solve(v, kept, Matrix.ones(kept.length, 1))
  const sum = raw.reduce((s, w) => s + w, 0)
  return raw.map((w) => w / sum)
}

const solve = (v: readonly number[][], kept: readonly number[], right: Matrix): number[] =>
  new CholeskyDecomposition(new Matrix(kept.map((i) => kept.map((j) => element(element(v, i), j)))))
    .solve(right)
    .to1DArray()

function disagreement(values: readonly Uncertain[], weights: readonly number[]): Uncertain {
  const dof = values.length - 1
  const mean = values.reduce((s, x, i) => s + element(weights, i) * x.value, 0)
  const residuals = values.map((x) => x.value - mean)
  if (dof === 0) return exact(0)
  const scatter = Math.sqrt(residuals.reduce((s, r, i) => s + element(weights, i) * r * r, 0) / dof)
  const someExact = values.some((v) => standardUncertainty(v) === 0)
  if (!someExact) {
    const all = values.map((_, i) => i)
    const solved = solve(covariances(atCommonSize(values)), all, Matrix.columnVector(residuals))
    const chi2 = dot(residuals, solved)
    if (chiSquareExceeds(Math.max(chi2, 0), dof) >= DISAGREE_BELOW) return exact(0)
  }
  return measured(0, scatter, 'disagreement of the evidence', { dof })
}
