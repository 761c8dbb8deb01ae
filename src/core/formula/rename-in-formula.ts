import { formulaTokens } from './formula-tokens.ts'

/** A formula or relation with one name put in place of another wherever it stands whole; all else stays as it is written. */
export function renameInFormula(formula: string, from: string, to: string): string {
  let renamed = ''
  let done = 0
  for (const { kind, at, end, text } of formulaTokens(formula)) {
    if (kind !== 'name' || text !== from) continue
    renamed += formula.slice(done, at) + to
    done = end
  }
  return renamed + formula.slice(done)
}

/** The names that stand in a formula or relation whole. */
export const wordsOfFormula = (formula: string): readonly string[] =>
  formulaTokens(formula).flatMap(({ kind, text }) => (kind === 'name' ? [text] : []))

/** Whether a name stands in a formula. */
export const standsIn = (formula: string, name: string): boolean => wordsOfFormula(formula).includes(name)
