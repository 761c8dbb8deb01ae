import type { QuantityKind } from '../quantity/quantity-kind.ts'

/** Powers of length and angle; a plain number has neither. */
export interface Units {
  length: number
  angle: number
}

export const NUMBER: Units = { length: 0, angle: 0 }
export const LENGTH: Units = { length: 1, angle: 0 }
export const AREA: Units = { length: 2, angle: 0 }
export const ANGLE: Units = { length: 0, angle: 1 }

export const UNITS_OF_KIND: Readonly<Record<QuantityKind, Units>> = {
  length: LENGTH,
  angle: ANGLE,
  area: AREA,
  count: NUMBER,
}

export const sameUnits = (a: Units, b: Units): boolean => a.length === b.length && a.angle === b.angle

/** `a length`, `an area`, `a length × angle`: for messages. */
export function unitsInWords({ length, angle }: Units): string {
  const parts = [powerInWords(length, ['a length', 'an area', 'a volume']), powerInWords(angle, ['an angle'])]
  const words = parts.filter((p) => p !== '')
  return words.length === 0 ? 'a plain number' : words.join(' times ')
}

function powerInWords(power: number, names: string[]): string {
  if (power === 0) return ''
  return names[power - 1] ?? `${names[0]} to the power of ${power}`
}
