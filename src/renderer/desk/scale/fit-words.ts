/** How far the scale found is from the one stated: `0.3 % smaller than stated`. */
export function offStated(found: number, stated: number): string {
  const off = 100 * (found / stated - 1)
  if (Math.abs(off) < 0.05) return 'as stated'
  return `${Math.abs(off).toFixed(1)} % ${off < 0 ? 'smaller' : 'larger'} than stated`
}

/** By how much lengths come out otherwise: `1.1 % longer`. */
export function percentLonger(share: number): string {
  const percent = Math.abs(100 * share)
  if (percent < 0.01) return 'the same'
  return `${percent.toPrecision(2)} % ${share < 0 ? 'shorter' : 'longer'}`
}
