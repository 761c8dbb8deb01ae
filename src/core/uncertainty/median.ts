/** Middle value; of an even number the mean of the middle two, of none 0. */
export function median(values: readonly number[]): number {
  if (values.length === 0) return 0
  const sorted = [...values].sort((a, b) => a - b)
  const half = sorted.length >> 1
  const high = sorted[half] as number
  return sorted.length % 2 === 1 ? high : (high + (sorted[half - 1] as number)) / 2
}
