import { correlatedNumbers } from '../uncertainty/correlated.ts'
import { propagate, type Uncertain } from '../uncertainty/uncertain.ts'
import { reason } from '../words/core-words.ts'
import { GeometryError } from './geometry-error.ts'

/** A straight line of y on x, with its uncertainty; intercept and slope are correlated. */
export interface RegressionLine {
  intercept: Uncertain
  slope: Uncertain
  /** Experimental standard deviation of the points about the line, in the unit of y. */
  s: number
  dof: number
  /** The line at x, with its uncertainty. */
  at(x: number): Uncertain
}

/**
 * Ordinary least-squares line y = intercept + slope · x, the errors all in y and estimated from the scatter.
 * @param x and y: same length, three or more, not all x the same
 * Source: JCGM 100:2008, H.3.2, eq. H.13a to H.13f.
 */
export function regressionLine(x: readonly number[], y: readonly number[]): RegressionLine {
  const n = x.length
  if (n !== y.length || n < 3) throw new GeometryError(reason('regression.too-few-pairs'))
  const mx = x.reduce((s, v) => s + v, 0) / n
  const my = y.reduce((s, v) => s + v, 0) / n
  const sxx = x.reduce((s, v) => s + (v - mx) ** 2, 0)
  if (!(sxx > 0)) throw new GeometryError(reason('regression.one-abscissa'))
  const sxy = x.reduce((s, v, i) => s + (v - mx) * ((y[i] ?? 0) - my), 0)
  const slopeValue = sxy / sxx
  const squares = x.reduce((s, v, i) => s + ((y[i] ?? 0) - my - slopeValue * (v - mx)) ** 2, 0)
  const dof = n - 2
  const s = Math.sqrt(squares / dof)
  const varSlope = s ** 2 / sxx
  const [intercept, slope] = correlatedNumbers(
    [my - slopeValue * mx, slopeValue],
    [
      [s ** 2 / n + mx ** 2 * varSlope, -mx * varSlope],
      [-mx * varSlope, varSlope],
    ],
    'scatter about the line',
    { dof },
  ) as [Uncertain, Uncertain]
  return {
    intercept,
    slope,
    s,
    dof,
    at: (at) => propagate(intercept.value + slope.value * at, [intercept, slope], [1, at]),
  }
}
