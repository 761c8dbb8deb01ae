import { element } from '../linear-algebra/element.ts'
/** Middle value; of an even number the mean of the middle two, of none 0. */
export function median(values: readonly number[]): number {
  if (values.length === 0) return 0
  const sorted = [...values].sort((a, b) => a - b)
  const half = sorted.length >> 1
  const high = element(sorted, half)
  return sorted.length % 2 === 1 ? high : (high + element(sorted, half - 1)) / 2
}
