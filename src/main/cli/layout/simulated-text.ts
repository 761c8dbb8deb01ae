import type { SimulatedRow } from '../../../core/ledger/simulate-row.ts'
import { twoFigures } from '../../../core/quantity/format/rounding.ts'

/**
 * A row by Monte Carlo beside first order, and the verdict, for a terminal.
 * @param suffix unit of the row as it stands after a number, e.g. ` in`
 */
export function simulatedText(row: SimulatedRow, suffix: string): string {
  const { firstOrder, simulated, verdict } = row
  const places = Math.max(0, 2 - Math.floor(Math.log10(firstOrder.u)))
  const number = (value: number): string => value.toFixed(Math.min(places, 12)).replace('-', '−')
  const line = (name: string, value: number, u: number, low: number, high: number): string =>
    `  ${name}  ${number(value)}${suffix}, u ${twoFigures(u)}, 95 % from ${number(low)} to ${number(high)}`
  const within = `within ${twoFigures(verdict.tolerance)}${suffix}`
  const worst = Math.max(verdict.lowDifference, verdict.highDifference)
  return [
    `${row.name}, ${simulated.trials} trials`,
    line(
      'first order',
      firstOrder.value,
      firstOrder.u,
      firstOrder.value - firstOrder.U,
      firstOrder.value + firstOrder.U,
    ),
    line('Monte Carlo', simulated.mean, simulated.u, simulated.low, simulated.high),
    verdict.firstOrderIsGoodEnough
      ? `First order is good enough: both ends agree ${within} (JCGM 101, clause 8).`
      : `First order is not good enough: the ends differ by up to ${twoFigures(worst)}${suffix}, and should agree ${within} (JCGM 101, clause 8). Go by the Monte Carlo interval.`,
    ...(row.failures === 0 ? [] : [`${row.failures} further trials gave no value.`]),
    '',
  ].join('\n')
}
