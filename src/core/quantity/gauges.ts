import Fraction from 'fraction.js'
import { CoreError } from '../words/core-error.ts'
import { reason } from '../words/core-words.ts'

/**
 * - `us-standard-1893`: standard gauge for sheet and plate iron and steel, Act of Congress of 3 March 1893 (15 USC 206)
 * - `birmingham`: Birmingham wire gauge (B.W.G.), which is Stubs' iron wire gauge. Not the Birmingham sheet and
 *   hoop gauge (B.G.), which is another table.
 * - `imperial-1884`: the Imperial standard wire gauge (S.W.G.) of Great Britain, by the Order in Council of 23 August
 *   1883, in force from 1 March 1884
 */
export const GAUGE_STANDARDS = ['us-standard-1893', 'birmingham', 'imperial-1884'] as const

export type GaugeStandard = (typeof GAUGE_STANDARDS)[number]

/** How each standard is called out on a drawing when it has to be told from others. */
export const GAUGE_CALL_OUTS: Record<GaugeStandard, string> = {
  'us-standard-1893': 'U.S.S.G.',
  birmingham: 'B.W.G.',
  'imperial-1884': 'S.W.G.',
}

/** From 7/0 to 38. Thickness in fractions of an inch, as the Act states it. */
const US_STANDARD_1893 = [
  '1/2 15/32 7/16 13/32 3/8 11/32 5/16',
  '9/32 17/64 1/4 15/64 7/32 13/64 3/16 11/64 5/32 9/64',
  '1/8 7/64 3/32 5/64 9/128 1/16 9/160 1/20 7/160 3/80',
  '11/320 1/32 9/320 1/40 7/320 3/160 11/640 1/64 9/640 1/80',
  '7/640 13/1280 3/320 11/1280 5/640 9/1280 17/2560 1/160',
].join(' ')

/** From 4/0 to 36. Thickness in inches. */
const BIRMINGHAM = [
  '0.454 0.425 0.380 0.340',
  '0.300 0.284 0.259 0.238 0.220 0.203 0.180 0.165 0.148 0.134',
  '0.120 0.109 0.095 0.083 0.072 0.065 0.058 0.049 0.042 0.035',
  '0.032 0.028 0.025 0.022 0.020 0.018 0.016 0.014 0.013 0.012',
  '0.010 0.009 0.008 0.007 0.005 0.004',
].join(' ')

/** From 7/0 to 50. Thickness in inches. From memory of the Order's table, as BS 3737 had it after. */
const IMPERIAL_1884 = [
  '0.500 0.464 0.432 0.400 0.372 0.348',
  '0.324 0.300 0.276 0.252 0.232 0.212 0.192 0.176 0.160 0.144',
  '0.128 0.116 0.104 0.092 0.080 0.072 0.064 0.056 0.048 0.040',
  '0.036 0.032 0.028 0.024 0.022 0.020 0.018 0.0164 0.0148 0.0136',
  '0.0124 0.0116 0.0108 0.0100 0.0092 0.0084 0.0076 0.0068 0.0060 0.0052',
  '0.0048 0.0044 0.0040 0.0036 0.0032 0.0028 0.0024 0.0020 0.0016 0.0012',
  '0.0010',
].join(' ')

/** Thicknesses in inches, thickest first; the number of a gauge is its place less `noughts`, so that 1 follows 0. */
interface GaugeTable {
  readonly noughts: number
  readonly inches: readonly Fraction[]
}

function table(noughts: number, thicknesses: string): GaugeTable {
  return { noughts, inches: thicknesses.split(' ').map((written) => new Fraction(written)) }
}

const TABLES: Record<GaugeStandard, GaugeTable> = {
  'us-standard-1893': table(7, US_STANDARD_1893),
  birmingham: table(4, BIRMINGHAM),
  'imperial-1884': table(7, IMPERIAL_1884),
}

/** Place of a written number in a table; `4/0` and `0000` are the same gauge. It may lie outside the table. */
function place(no: string, noughts: number): number | undefined {
  if (/^0+$/.test(no)) return noughts - no.length
  const slashed = /^([1-9])\/0$/.exec(no)
  if (slashed) return noughts - Number(slashed[1])
  return /^[1-9]\d?$/.test(no) ? noughts - 1 + Number(no) : undefined
}

/** The numbers of a standard, thickest first, as they are written on a drawing: `7/0` ... `2/0`, `0`, `1` ... */
export function gaugeNumbers(standard: GaugeStandard): string[] {
  const { noughts, inches } = TABLES[standard]
  return inches.map((_, i) => {
    const no = i - noughts + 1
    return no >= 0 ? String(no) : `${1 - no}/0`
  })
}

function placeIn(no: string | number, standard: GaugeStandard): number | undefined {
  const { noughts, inches } = TABLES[standard]
  const i = place(String(no), noughts)
  return i !== undefined && i >= 0 && i < inches.length ? i : undefined
}

/** The number as this project writes it: `0000` and `4/0` are both `4/0`; undefined when the standard has none such. */
export function gaugeNumber(no: string | number, standard: GaugeStandard): string | undefined {
  const i = placeIn(no, standard)
  return i === undefined ? undefined : gaugeNumbers(standard)[i]
}

/** The first and the last number of a standard, the thickest sheet first. */
export function gaugeRange(standard: GaugeStandard): {
  standard: GaugeStandard
  first: string
  last: string
} {
  const numbers = gaugeNumbers(standard)
  return { standard, first: numbers[0] ?? '', last: numbers.at(-1) ?? '' }
}

function required(no: string | number, standard: GaugeStandard): number {
  const i = placeIn(no, standard)
  if (i === undefined) {
    const range = gaugeRange(standard)
    throw new CoreError(reason('notation.no-such-gauge', { number: String(no), range }))
  }
  return i
}

/**
 * Thickness of a sheet by its gauge number.
 *
 * @param no `16`, `0`, `4/0` or `0000`
 * @returns inches, exact
 * @throws ScantlingError when the standard has no such number
 */
export function gaugeThickness(no: string | number, standard: GaugeStandard): Fraction {
  return TABLES[standard].inches[required(no, standard)] ?? new Fraction(0n, 1n)
}

/**
 * The step of the table about a gauge number: half the way to the thicker neighbour and half the way to the thinner
 * one together, since a sheet called by a number is nearer to it than to either. At an end of the table, the one step.
 *
 * @returns inches, exact
 * @throws ScantlingError when the standard has no such number
 */
export function gaugeStep(no: string | number, standard: GaugeStandard): Fraction {
  const { inches } = TABLES[standard]
  const i = required(no, standard)
  const from = Math.max(0, i - 1)
  const to = Math.min(inches.length - 1, i + 1)
  const across = (inches[from] ?? new Fraction(0n, 1n)).sub(inches[to] ?? new Fraction(0n, 1n))
  return across.div(new Fraction(BigInt(to - from), 1n))
}
