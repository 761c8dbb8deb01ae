import { reason } from '../words/core-words.ts'
import { type Formula, parseFormula } from './formula.ts'
import { FormulaError } from './formula-error.ts'
import { formulaTokens } from './formula-tokens.ts'

/**
 * Reads a relation such as `overall = neck + drum + rim` into its two sides. What follows a `#` is a remark, up to the
 * end of its line, an `=` in it too.
 * @throws FormulaError when it has no single `=` or a side can't be read
 */
export function parseRelation(text: string): { left: Formula; right: Formula } {
  const [equals, another] = formulaTokens(text).filter((token) => token.kind === 'sign' && token.text === '=')
  if (equals === undefined || another !== undefined) {
    throw new FormulaError(reason('formula.relation-without-sides', { text }))
  }
  return {
    left: parseFormula(text.slice(0, equals.at).trim()),
    right: parseFormula(text.slice(equals.end).trim()),
  }
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
