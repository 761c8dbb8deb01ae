import type { Unit } from '../../job/model/types.ts'
import { twoFigures } from '../../quantity/format/rounding.ts'
import type { QuantityKind } from '../../quantity/quantity-kind.ts'

/**
 * What follows a value that is uncertain: ` ± 0.075"`; nothing where nothing is uncertain.
 * @param U expanded uncertainty in the table's units
 */
export const plusMinus = (U: number, kind: QuantityKind, unit: Unit): string =>
  U > 0 ? ` ± ${twoFigures(U)}${unitSuffix(kind, unit)}` : ''

/** What follows a number of this kind of dimension in the table's unit: `"`, ` mm`, ` sq in`, ` mm²`, `°`. */
export function unitSuffix(kind: QuantityKind, unit: Unit): string {
  if (kind === 'angle') return '°'
  if (kind === 'area') return unit === 'in' ? ' sq in' : ' mm²'
  if (kind === 'count') return ''
  return unit === 'in' ? '"' : ' mm'
}
