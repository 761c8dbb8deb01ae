import { element } from '../linear-algebra/element.ts'

/** What a value is between, at 95 %, in its unit. */
export interface Interval {
  low: number
  high: number
}

/**
 * The interval that holds a share of the trials: the probabilistically symmetric one, or the nearest to it that takes in
 * the value. A value beyond all trials becomes an end of it.
 * @param sorted trials, the least first
 * @throws RangeError when there are fewer than 100
 * Source: JCGM 101:2008, 7.7; any of its intervals has the coverage, 7.7.1.
 */
export function intervalTakingIn(value: number, sorted: Float64Array, coverage = 0.95): Interval {
  const n = sorted.length
  if (n < 100) throw new RangeError(`An interval needs at least 100 trials, not ${n}.`)
  const q = Math.min(Math.round(coverage * n), n - 1)
  let r = Math.round((n - q) / 2)
  while (r > 0 && element(sorted, r) > value) r -= 1
  while (r + q < n - 1 && element(sorted, r + q) < value) r += 1
  return { low: Math.min(value, element(sorted, r)), high: Math.max(value, element(sorted, r + q)) }
}
