import { newSource, type Source } from '../../uncertainty/source.ts'

/** What is below this tells nothing of how picks scatter: a job keeps thousandths of a pixel. Pixels². */
export const NO_SCATTER = 1e-12

/** Mean of vectors of one length. */
export function meanOf(picks: readonly (readonly number[])[]): number[] {
  const n = picks.length
  return (picks[0] ?? []).map((_, i) => picks.reduce((sum, pick) => sum + (pick[i] ?? 0), 0) / n)
}

/** One pick's share in the uncertainty of the mean of all. */
export interface Deviation {
  source: Source
  by: number[]
}

/**
 * The uncertainty of the mean of repeated picks as sources, one for each pick: its deviation from the mean over
 * √(n(n − 1)). Their squares and products add up to the covariance of the mean, whatever is correlated in it.
 * @param picks vectors of one length, in one unit
 * @param label what a budget calls them
 * @returns none where the picks agree to the last digit
 * Source: JCGM 100:2008, 4.2.3 (eq. 5) and 5.2.3 (eq. 17); n − 1 degrees of freedom.
 */
export function deviationsOf(picks: readonly (readonly number[])[], label: string): Deviation[] {
  const n = picks.length
  if (n < 2) return []
  const mean = meanOf(picks)
  const away = picks.map((pick) => pick.map((value, i) => value - (mean[i] ?? 0)))
  if (away.every((one) => one.every((d) => d * d <= NO_SCATTER))) return []
  const estimate = { dof: n - 1 }
  const share = 1 / Math.sqrt(n * (n - 1))
  return away.map((one) => ({ source: newSource(label, estimate), by: one.map((d) => d * share) }))
}
