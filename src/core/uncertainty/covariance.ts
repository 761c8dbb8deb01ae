import type { Source } from './source.ts'
import type { Uncertain } from './uncertain.ts'

/** Combined variance u². Source: JCGM 100:2008, eq. 10 (the sources are independent). */
export function variance(x: Uncertain): number {
  const { coefficients } = x
  let sum = 0
  // By index: this runs for every number of every table, and an iterator would be made for each.
  for (let i = 0; i < coefficients.length; i++) sum += (coefficients[i] as number) ** 2
  return sum
}

/** Combined standard uncertainty u, in the unit of the value. */
export function standardUncertainty(x: Uncertain): number {
  return Math.sqrt(variance(x))
}

/** Covariance u(a, b) = Σ over the shared sources. Source: JCGM 100:2008, F.1.2.3, eq. F.2. */
export function covariance(a: Uncertain, b: Uncertain): number {
  let sum = 0
  if (a.sources === b.sources) {
    for (let i = 0; i < a.coefficients.length; i++) {
      sum += (a.coefficients[i] as number) * (b.coefficients[i] as number)
    }
    return sum
  }
  let i = 0
  let j = 0
  while (i < a.sources.length && j < b.sources.length) {
    const orderA = (a.sources[i] as Source).order
    const orderB = (b.sources[j] as Source).order
    if (orderA === orderB) sum += (a.coefficients[i++] as number) * (b.coefficients[j++] as number)
    else if (orderA < orderB) i++
    else j++
  }
  return sum
}

/** Correlation coefficient r(a, b); 0 where either is exact. Source: JCGM 100:2008, eq. 14. */
export function correlation(a: Uncertain, b: Uncertain): number {
  const product = standardUncertainty(a) * standardUncertainty(b)
  return product === 0 ? 0 : covariance(a, b) / product
}
