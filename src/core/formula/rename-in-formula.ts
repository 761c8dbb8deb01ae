/** A number, a text in quotes, or a name; numbers and texts are matched so that no name is seen inside them. */
const TOKEN =
  /0[xX][0-9a-fA-F]+|(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?|"(?:[^"\\]|\\.)*"|[\p{L}_$][\p{L}\p{N}_$]*/gu

/** A formula with one name put in place of another wherever it stands whole; all else stays as it is written. */
export function renameInFormula(formula: string, from: string, to: string): string {
  return formula.replace(TOKEN, (token) => (token === from ? to : token))
}

/** All that stands in a formula whole: its names, numbers and texts in quotes. */
export const wordsOfFormula = (formula: string): readonly string[] => formula.match(TOKEN) ?? []

/** Whether a name stands in a formula. */
export const standsIn = (formula: string, name: string): boolean => wordsOfFormula(formula).includes(name)
