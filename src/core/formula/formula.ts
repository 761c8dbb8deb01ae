import { create, type MathNode, parseDependencies } from 'mathjs/number'
import type { Arithmetic } from '../uncertainty/arithmetic.ts'
import { reason } from '../words/core-words.ts'
import { compileUnits } from './compile-units.ts'
import { compileValue } from './compile-value.ts'
import { FormulaError } from './formula-error.ts'
import type { Units } from './formula-units.ts'

export { RESERVED_NAMES } from './formula-constants.ts'

/** A formula over dimension names. */
export interface Formula {
  text: string
  /** Dimension names it uses, each once. */
  names: readonly string[]
  /**
   * Units of the result, given those of each name.
   * @throws FormulaError where units are mixed
   */
  units(of: (name: string) => Units): Units
  /** Value in mm, mm², radians or a plain number. */
  value<N>(of: (name: string) => N, arithmetic: Arithmetic<N>): N
}

// The parser alone: the library's own has all of its functions made at once, a tenth of a second for each program.
const { parse } = create({ ...parseDependencies })

// Parsing is slow beside evaluation and a table is computed many times from one text.
const parsed = new Map<string, Formula>()
const MOST_KEPT = 5000

/** Characters; what is longer could exhaust the call stack. */
const LONGEST = 2000

/**
 * Reads a formula such as `pi * (barrel_od - sheet_thickness)`.
 * @throws FormulaError saying what can't be read
 */
export function parseFormula(text: string): Formula {
  const known = parsed.get(text)
  if (known !== undefined) return known
  const node = parseNode(text)
  const names = new Set<string>()
  const units = compileUnits(node, names)
  const formula: Formula = { text, names: [...names], units, value: compileValue(node) }
  if (parsed.size >= MOST_KEPT) parsed.clear()
  parsed.set(text, formula)
  return formula
}

/** A number or a bracket, not the last digit of a name, and then `in`. */
const INCH_AFTER_NUMBER = /((?<![\p{L}\p{N}_$.])(?:\d+\.?\d*|\.\d+)\s*|\)\s*)in\b/gu

function parseNode(text: string): MathNode {
  if (text.trim() === '') throw new FormulaError(reason('formula.empty'))
  if (text.length > LONGEST) {
    throw new FormulaError(reason('formula.too-long', { length: text.length, longest: LONGEST }))
  }
  try {
    // The parser takes `in` for its conversion operator, so that `x - 3/8 in` would be `(x - 3/8) in`.
    return parse(text.trim().replace(INCH_AFTER_NUMBER, '$1inch'))
  } catch (error) {
    const why = error instanceof Error ? error.message.replace(/\s+/g, ' ') : 'unknown reason'
    throw new FormulaError(reason('formula.unreadable', { text, why }))
  }
}
