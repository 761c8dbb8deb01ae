import { element } from '../linear-algebra/element.ts'
import { covariance } from './covariance.ts'
import { type Coverage, expand } from './coverage.ts'
import { chiSquareExceeds, NORMAL_95 } from './distributions.ts'
import type { Uncertain } from './uncertain.ts'

/** How several values of one quantity agree, all together. */
export interface JointTest {
  chi2: number
  /** How many independent differences there are among them. */
  dof: number
  /** Probability of as much disagreement among values that agree. */
  p: number
}

/** What is left of a variance that is nothing but rounding. */
const ROUNDING = 1e-12

/**
 * Chi-square of the differences among values of one quantity, with all that they share: what only shifts them together
 * says nothing of their agreement. Where an estimate of variance is limited, the variance is enlarged to (U / 1.96)², so
 * that each counts with its 95 % interval. Differences that the others settle, and that are as these say, count for
 * nothing; one that is not as these say can't be.
 * Source: the quadratic form of a singular normal distribution (Rao, *Linear Statistical Inference*, 8a; from memory),
 * by a Cholesky factor with pivots.
 */
export function jointTest(
  values: readonly Uncertain[],
  coverages: readonly Coverage[] = values.map((x) => expand(x)),
): JointTest {
  const { rest, variances } = differences(values, coverages)
  const n = rest.length
  const size = Math.max(...values.map(({ value }) => Math.abs(value)), Number.MIN_VALUE)
  const largest = Math.max(...variances.map((row, i) => element(row, i)), 0)
  const left = variances.map((row) => [...row])
  const open = new Set(rest.map((_, i) => i))
  let chi2 = 0
  let dof = 0
  while (open.size > 0) {
    const pivot = [...open].reduce((best, i) => (at(left, i, i) > at(left, best, best) ? i : best))
    const variance = at(left, pivot, pivot)
    if (!(variance > ROUNDING * largest)) break
    open.delete(pivot)
    chi2 += element(rest, pivot) ** 2 / variance
    dof += 1
    const column = Array.from({ length: n }, (_, i) => at(left, i, pivot))
    for (const i of open) {
      const share = element(column, i) / variance
      rest[i] = element(rest, i) - share * element(rest, pivot)
      for (const j of open) (left[i] as number[])[j] = at(left, i, j) - share * element(column, j)
    }
  }
  const impossible = [...open].some((i) => Math.abs(element(rest, i)) > 1e-9 * size)
  if (impossible) return { chi2: Number.POSITIVE_INFINITY, dof: Math.max(dof, 1), p: 0 }
  return { chi2, dof, p: dof === 0 ? 1 : chiSquareExceeds(chi2, dof) }
}

const at = (matrix: readonly (readonly number[])[], i: number, j: number): number =>
  element(element(matrix, i), j)

/** Of each value from the first, with their covariance. */
function differences(values: readonly Uncertain[], coverages: readonly Coverage[]) {
  const widened = coverages.map(({ k }) => k / NORMAL_95)
  const c = values.map((a, i) =>
    values.map((b, j) => element(widened, i) * element(widened, j) * covariance(a, b)),
  )
  const first = element(values, 0).value
  const others = values.slice(1)
  return {
    rest: others.map(({ value }) => value - first),
    variances: others.map((_, i) =>
      others.map((_, j) => at(c, i + 1, j + 1) - at(c, i + 1, 0) - at(c, 0, j + 1) + at(c, 0, 0)),
    ),
  }
}
