/** A number with more decimals than this is written with an exponent. */
export const MOST_DECIMALS = 12

/** Decimals that two significant figures of an uncertainty need; negative where they end at tens or above. */
export function uncertaintyDecimals(u: number): number {
  return 1 - Math.floor(Math.log10(Math.abs(Number(u.toPrecision(2)))))
}

/**
 * An uncertainty to two significant figures, without an exponent in the range of workshop sizes
 * (GUM, JCGM 100:2008, 7.2.6: it usually suffices to quote uncertainties to at most two significant digits).
 */
export function twoFigures(u: number): string {
  if (!Number.isFinite(u)) return '?'
  if (u === 0) return '0'
  const rounded = Number(u.toPrecision(2))
  const decimals = uncertaintyDecimals(u)
  if (decimals > MOST_DECIMALS) return rounded.toExponential(1)
  return decimals > 0 ? rounded.toFixed(decimals) : String(rounded)
}
