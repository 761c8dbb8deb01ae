import { degrees, toRadians } from '../geometry/angle-units.ts'
import { FORMULA_FUNCTIONS } from './formula-functions.ts'
import { ANGLE, LENGTH, NUMBER, type Units } from './formula-units.ts'

export interface FormulaConstant {
  value: number
  units: Units
}

/** Names with a fixed meaning: constants, and units in millimetres and radians. */
const CONSTANTS: Readonly<Record<string, FormulaConstant>> = {
  pi: { value: Math.PI, units: NUMBER },
  tau: { value: 2 * Math.PI, units: NUMBER },
  e: { value: Math.E, units: NUMBER },
  in: { value: 25.4, units: LENGTH },
  inch: { value: 25.4, units: LENGTH },
  ft: { value: 304.8, units: LENGTH },
  mm: { value: 1, units: LENGTH },
  cm: { value: 10, units: LENGTH },
  m: { value: 1000, units: LENGTH },
  deg: { value: toRadians(degrees(1)), units: ANGLE },
  rad: { value: 1, units: ANGLE },
}

/** Names that no dimension may have. */
export const RESERVED_NAMES: ReadonlySet<string> = new Set([
  ...Object.keys(CONSTANTS),
  ...Object.keys(FORMULA_FUNCTIONS),
])

export const constantOf = (name: string): FormulaConstant | undefined =>
  Object.hasOwn(CONSTANTS, name) ? CONSTANTS[name] : undefined
