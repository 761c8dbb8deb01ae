import { MOST_DECIMALS, uncertaintyDecimals } from './two-figures.ts'

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
