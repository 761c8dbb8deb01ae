import type { Arithmetic } from '../uncertainty/arithmetic.ts'
import { reason } from '../words/core-words.ts'
import { compileUnits } from './compile-units.ts'
import { compileValue } from './compile-value.ts'
import { edgesOf, type FormulaEdge, isLinear } from './formula-edges.ts'
import { FormulaError } from './formula-error.ts'
import type { FormulaNode } from './formula-tree.ts'
import type { Units } from './formula-units.ts'
import { parseTree } from './parse-tree.ts'

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
  /** Whether it only adds its dimensions up, each times a number. */
  linear: boolean
  /** The parts beyond whose edge it has no value. */
  edges(): readonly FormulaEdge[]
}

// Parsing is slow beside evaluation and a table is computed many times from one text.
const parsed = new Map<string, Formula>()
const MOST_KEPT = 5000

/** Characters; what is longer could exhaust the call stack. */
const LONGEST = 2000

/**
 * Reads a formula such as `pi * (drum_od - sheet_thickness)` or `2'-3" - gap`.
 * @throws FormulaError saying what can't be read
 */
export function parseFormula(text: string): Formula {
  const known = parsed.get(text)
  if (known !== undefined) return known
  const node = parseNode(text)
  const names = new Set<string>()
  const units = compileUnits(node, text, names)
  const formula: Formula = {
    text,
    names: [...names],
    units,
    value: compileValue(node),
    linear: isLinear(node),
    // Seldom asked for, and then once.
    edges: () => edgesOf(node, text),
  }
  if (parsed.size >= MOST_KEPT) parsed.clear()
  parsed.set(text, formula)
  return formula
}

function parseNode(text: string): FormulaNode {
  if (text.trim() === '') throw new FormulaError(reason('formula.empty'))
  if (text.length > LONGEST) {
    throw new FormulaError(reason('formula.too-long', { length: text.length, longest: LONGEST }))
  }
  return parseTree(text)
}
