import { reason } from '../words/core-words.ts'
import { type Formula, parseFormula } from './formula.ts'
import { FormulaError } from './formula-error.ts'

/**
 * Reads a relation such as `overall = neck + drum + rim` into its two sides.
 * @throws FormulaError when it has no single `=` or a side can't be read
 */
export function parseRelation(text: string): { left: Formula; right: Formula } {
  const sides = text.split('=')
  if (sides.length !== 2) {
    throw new FormulaError(reason('formula.relation-without-sides', { text }))
  }
  return { left: parseFormula((sides[0] as string).trim()), right: parseFormula((sides[1] as string).trim()) }
}

/** The names on both sides of a relation, each once; none of one that can't be read, for it is not checked. */
export function namesInRelation(text: string): string[] {
  try {
    const { left, right } = parseRelation(text)
    return [...new Set([...left.names, ...right.names])]
  } catch (error) {
    if (error instanceof FormulaError) return []
    throw error
  }
}
