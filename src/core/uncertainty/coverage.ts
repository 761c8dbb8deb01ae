import { variance } from './covariance.ts'
import { coverageFactor } from './distributions.ts'
import type { VarianceEstimate } from './source.ts'
import type { Uncertain } from './uncertain.ts'

/**
 * Effective degrees of freedom by Welch–Satterthwaite; Infinity when no estimate of variance is limited.
 * Contributions that rest on one estimate of variance are added before squaring.
 * @param total its combined variance, where that is known already
 * Source: JCGM 100:2008, eq. G.2b.
 */
export function effectiveDof(x: Uncertain, total = variance(x)): number {
  let limited: Map<VarianceEstimate, number> | undefined
  for (let i = 0; i < x.sources.length; i++) {
    const estimate = x.sources[i]?.estimate
    if (estimate === undefined || estimate.dof === Number.POSITIVE_INFINITY) continue
    const c = x.coefficients[i] ?? Number.NaN
    limited ??= new Map()
    limited.set(estimate, (limited.get(estimate) ?? 0) + c * c)
  }
  if (limited === undefined) return Number.POSITIVE_INFINITY
  let sum = 0
  for (const [estimate, part] of limited) sum += (part * part) / estimate.dof
  return sum === 0 ? Number.POSITIVE_INFINITY : (total * total) / sum
}

/** How uncertain a value is, and the half-width of the interval that covers it. In the unit of the value. */
export interface Coverage {
  /** Standard uncertainty. */
  u: number
  /** Expanded uncertainty k · u. */
  U: number
  k: number
  /** Effective degrees of freedom; Infinity when not limited. */
  dof: number
}

/**
 * Expanded uncertainty U = k·u with k from Student's t at the effective degrees of freedom.
 * Source: JCGM 100:2008, 6.2.1 and G.4.
 */
export function expand(x: Uncertain, coverage = 0.95): Coverage {
  const total = variance(x)
  const u = Math.sqrt(total)
  const dof = u === 0 ? Number.POSITIVE_INFINITY : effectiveDof(x, total)
  const k = coverageFactor(dof, coverage)
  return { u, U: k * u, k, dof }
}
