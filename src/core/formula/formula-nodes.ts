import type { FunctionNode, MathNode, SymbolNode } from 'mathjs/number'
import { reason } from '../words/core-words.ts'
import { FormulaError } from './formula-error.ts'
import { FORMULA_FUNCTIONS, type FormulaFunction } from './formula-functions.ts'

const FUNCTIONS = Object.keys(FORMULA_FUNCTIONS)

/** Refuses what the expression language has and formulas do not. */
export function refuse(node: MathNode): never {
  throw new FormulaError(
    reason('formula.no-part-of-formulas', { expression: node.toString(), functions: FUNCTIONS }),
  )
}

/** What stands between brackets. */
export const inner = (node: MathNode): MathNode => (node as MathNode & { content: MathNode }).content

/** @throws FormulaError for strings, booleans and numbers that are not finite */
export function numberOf(node: MathNode): number {
  const { value } = node as MathNode & { value: unknown }
  if (typeof value !== 'number' || !Number.isFinite(value)) return refuse(node)
  return value
}

/** @throws FormulaError when there is no such function or it takes another number of values */
export function functionOf(node: MathNode): { name: string; args: MathNode[]; does: FormulaFunction } {
  const { fn, args } = node as FunctionNode
  // The name of a property, as in `a.sqrt(4)`, is no function.
  if ((fn as MathNode).type !== 'SymbolNode') return refuse(node)
  const name = (fn as SymbolNode).name
  const does = Object.hasOwn(FORMULA_FUNCTIONS, name) ? FORMULA_FUNCTIONS[name] : undefined
  if (does === undefined) {
    throw new FormulaError(reason('formula.no-such-function', { name, functions: FUNCTIONS }))
  }
  const { least, most } = does.arguments
  if (args.length < least || args.length > most) {
    throw new FormulaError(reason('formula.number-of-values', { name, least, most, given: args.length }))
  }
  return { name, args, does }
}
