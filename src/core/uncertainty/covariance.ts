import { dot } from '../linear-algebra/dot.ts'
import type { Uncertain } from './uncertain.ts'

/** Combined variance u². Source: JCGM 100:2008, eq. 10 (the sources are independent). */
export function variance(x: Uncertain): number {
  const { coefficients } = x
  let sum = 0
  // By index and in place: this runs for every number of every table.
  for (let i = 0; i < coefficients.length; i++) sum += (coefficients[i] ?? Number.NaN) ** 2
  return sum
}

/** Combined standard uncertainty u, in the unit of the value. */
export function standardUncertainty(x: Uncertain): number {
  return Math.sqrt(variance(x))
}

/** Covariance u(a, b) = Σ over the shared sources. Source: JCGM 100:2008, F.1.2.3, eq. F.2. */
export function covariance(a: Uncertain, b: Uncertain): number {
  if (a.sources === b.sources) return dot(a.coefficients, b.coefficients)
  let sum = 0
  let i = 0
  let j = 0
  while (i < a.sources.length && j < b.sources.length) {
    const sourceA = a.sources[i]
    const sourceB = b.sources[j]
    if (sourceA === sourceB) sum += (a.coefficients[i++] ?? Number.NaN) * (b.coefficients[j++] ?? Number.NaN)
    else if ((sourceA?.order ?? Number.NaN) < (sourceB?.order ?? Number.NaN)) i++
    else j++
  }
  return sum
}

/** Correlation coefficient r(a, b); 0 where either is exact. Source: JCGM 100:2008, eq. 14. */
export function correlation(a: Uncertain, b: Uncertain): number {
  const product = standardUncertainty(a) * standardUncertainty(b)
  return product === 0 ? 0 : covariance(a, b) / product
}
