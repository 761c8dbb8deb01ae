/** Of heights that which three quarters do not exceed: full digits, beside which those of fractions are lower. */
export function heightOfMost(heights: readonly number[]): number | undefined {
  const sorted = [...heights].sort((a, b) => a - b)
  return sorted[Math.floor(0.75 * sorted.length)]
}
