/// <reference path="./jstat.d.ts" />
import jstat from 'jstat'

// A CommonJS package: it has a default export only.
const { jStat } = jstat

/** Two-sided quantile of the standard normal distribution at 95 %. */
export const NORMAL_95 = 1.959963984540054

/** The same at 99 %. */
export const NORMAL_99 = 2.5758293035489004

/** Degrees of freedom from which Student's t is taken as normal: k then differs by less than 3e-5. */
const PRACTICALLY_INFINITE = 1e5

/**
 * Coverage factor k from Student's t: the two-sided quantile that holds `coverage` of the distribution.
 * @param dof effective degrees of freedom, > 0; Infinity gives the normal quantile
 * @param coverage 0..1, default 0.95
 * Source: JCGM 100:2008, G.3 and table G.2.
 */
export function coverageFactor(dof: number, coverage = 0.95): number {
  if (dof > PRACTICALLY_INFINITE) {
    return coverage === 0.95 ? NORMAL_95 : jStat.normal.inv((1 + coverage) / 2, 0, 1)
  }
  return jStat.studentt.inv((1 + coverage) / 2, dof)
}

/** Probability that a chi-square variable with `dof` degrees of freedom exceeds `chi2`. */
export function chiSquareExceeds(chi2: number, dof: number): number {
  return 1 - jStat.chisquare.cdf(chi2, dof)
}

/**
 * Probability that a chi-square over its `dof` exceeds this, when the variances it was formed with are themselves
 * estimates worth `known` degrees of freedom (Fisher's F); Infinity gives the chi-square itself.
 */
export function chiSquareWithEstimatesExceeds(chi2: number, dof: number, known: number): number {
  if (known > PRACTICALLY_INFINITE) return chiSquareExceeds(chi2, dof)
  return 1 - jStat.centralF.cdf(chi2 / dof, dof, known)
}

/**
 * The standard normal deviate that is as improbable as t is with `dof` degrees of freedom, with its sign.
 * Beyond what doubles can tell apart it is 8.
 */
export function normalEquivalent(t: number, dof: number): number {
  if (dof > PRACTICALLY_INFINITE || t === 0) return t
  const p = jStat.studentt.cdf(-Math.abs(t), dof)
  return Math.sign(t) * (p > 1e-15 ? -jStat.normal.inv(p, 0, 1) : 8)
}

/** Two-sided probability that |t| with `dof` degrees of freedom exceeds |t|. */
export function studentExceeds(t: number, dof: number): number {
  return 2 * jStat.studentt.cdf(-Math.abs(t), dof)
}

/** Density of Student's t with `dof` degrees of freedom; of the standard normal distribution where those are infinite. */
export function studentDensity(t: number, dof: number): number {
  return dof > PRACTICALLY_INFINITE
    ? Math.exp(-(t * t) / 2) / Math.sqrt(2 * Math.PI)
    : jStat.studentt.pdf(t, dof)
}
