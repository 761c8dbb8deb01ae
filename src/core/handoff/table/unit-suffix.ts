import type { Unit } from '../../job/model/types.ts'

/** What follows a number of this kind of dimension in the table's unit: `"`, ` mm`, ` sq in`, ` mm²`, `°`. */
export function unitSuffix(kind: string, unit: Unit): string {
  if (kind === 'angle') return '°'
  if (kind === 'area') return unit === 'in' ? ' sq in' : ' mm²'
  if (kind === 'count') return ''
  return unit === 'in' ? '"' : ' mm'
}
