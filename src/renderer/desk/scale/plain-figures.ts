import type { Unit } from '../../../core/job/model/types.ts'
import { toUncertainty, twoFigures } from '../../../core/quantity/format/rounding.ts'

const minus = (digits: string): string => digits.replace(/^-(?=[0.]+$)/, '').replace('-', '−')

/** A number to so many decimals; nothing has no sign. */
export const plainNumber = (value: number, places: number): string => minus(value.toFixed(places))

/** A length in decimals: `11.497"`, `292.02 mm`. */
export const decimals = (value: number, unit: Unit): string =>
  unit === 'in' ? `${minus(value.toFixed(3))}"` : `${minus(value.toFixed(2))} mm`

/** A difference with its sign: `+0.003"`. */
export const difference = (value: number, unit: Unit): string => {
  const text = decimals(value, unit)
  return /^[−]|^0[.0]*(?:"| mm)$/.test(text) ? text : `+${text}`
}

/** A measured length to the place where its U ends: `28.6 ± 1.3 mm`. */
export function measuredText(value: number, U: number, unit: Unit): string {
  const mark = unit === 'in' ? '"' : ' mm'
  return U > 0 ? `${minus(toUncertainty(value, U))} ± ${twoFigures(U)}${mark}` : decimals(value, unit)
}
