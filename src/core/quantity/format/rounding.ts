/** A number with more decimals than this is written with an exponent. */
const MOST_DECIMALS = 12

/** Decimals that two significant figures of an uncertainty need; negative where they end at tens or above. */
function uncertaintyDecimals(u: number): number {
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

/** Significant digits where no uncertainty says how many count. */
const DIGITS_OF_EXACT = 6

/**
 * A number to the decimal place at which its uncertainty, given to two significant figures, ends
 * (GUM, JCGM 100:2008, 7.2.6): 0.0134541 with u 0.000028 is `0.013454`. With a true minus sign, none on a zero.
 * @param u standard uncertainty of it; where it is 0 or not finite, six significant digits
 */
export function toUncertainty(value: number, u: number): string {
  if (!Number.isFinite(value)) return '?'
  return rounded(value, u)
    .replace(/^-(?=[0.]*$)/, '')
    .replaceAll('-', '−')
}

function rounded(value: number, u: number): string {
  if (!Number.isFinite(u) || u <= 0) return String(Number(value.toPrecision(DIGITS_OF_EXACT)))
  const decimals = uncertaintyDecimals(u)
  if (decimals > MOST_DECIMALS) {
    const digits = value === 0 ? 0 : Math.floor(Math.log10(Math.abs(value))) + decimals
    return value.toExponential(Math.min(Math.max(digits, 0), 15))
  }
  if (decimals >= 0) return value.toFixed(decimals)
  const step = 10 ** -decimals
  return String(Math.round(value / step) * step)
}
