import { newSource, type Source } from '../../uncertainty/source.ts'
import { meanOf } from '../../uncertainty/type-a.ts'

/** What is below this tells nothing of how picks scatter: a job keeps thousandths of a pixel. Pixels². */
export const NO_SCATTER = 1e-12

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
export const deviationsOf = (picks: readonly (readonly number[])[], label: string): Deviation[] =>
  scaledDeviations(picks, label, 1 / Math.sqrt(picks.length * (picks.length - 1)), picks.length - 1)

/**
 * The same for another mean than that in which each pick counts alike.
 * @param times what each deviation is multiplied by
 * @param dof degrees of freedom; n − 1 where nothing else is known
 */
export function scaledDeviations(
  picks: readonly (readonly number[])[],
  label: string,
  times: number,
  dof: number,
): Deviation[] {
  const n = picks.length
  if (n < 2) return []
  const mean = meanOf(picks)
  const away = picks.map((pick) => pick.map((value, i) => value - (mean[i] ?? 0)))
  if (away.every((one) => one.every((d) => d * d <= NO_SCATTER))) return []
  const estimate = { dof }
  return away.map((one) => ({ source: newSource(label, estimate), by: one.map((d) => d * times) }))
}
