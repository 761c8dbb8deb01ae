import type { FigureOf } from '../figure.ts'
import type { TokenReader } from '../notation/token-reader.ts'
import type { Token } from '../notation/tokenise.ts'

/** A word beside a size that says what it is of or how it is made. */
export type FigureTerm =
  | 'diameter'
  | 'radius'
  | 'centres'
  | 'typical'
  | 'drilled'
  | 'outside'
  | 'inside'
  | 'square'

const TERMS = new Map<string, FigureTerm>([
  ['dia', 'diameter'],
  ['diam', 'diameter'],
  ['diameter', 'diameter'],
  ['r', 'radius'],
  ['rad', 'radius'],
  ['radius', 'radius'],
  ['cc', 'centres'],
  ['ctrs', 'centres'],
  ['centres', 'centres'],
  ['centers', 'centres'],
  ['typ', 'typical'],
  ['typical', 'typical'],
  ['drill', 'drilled'],
  ['drilled', 'drilled'],
  ['od', 'outside'],
  ['id', 'inside'],
  ['sq', 'square'],
  ['square', 'square'],
])

/** What a length is of by a term; two that differ contradict each other. */
export const OF_TERM: Readonly<Partial<Record<FigureTerm, FigureOf>>> = {
  diameter: 'diameter',
  drilled: 'diameter',
  outside: 'diameter',
  inside: 'diameter',
  radius: 'radius',
  centres: 'centres',
  square: 'length',
}

/** How many signs a call-out of centres takes: `C.C.`, `C. C.`, `C/C`, `C-C`, `C TO C`. */
function centresLength(reader: TokenReader): number {
  const isC = (token: Token): boolean => token.kind === 'word' && token.text === 'c'
  if (!isC(reader.peek())) return 0
  if (isC(reader.peek(1))) return 2
  const between = reader.peek(1)
  const joins = between.kind === 'slash' || between.kind === 'dash' || between.text === 'to'
  return joins && isC(reader.peek(2)) ? 3 : 0
}

/** Takes a term where one stands: `Ø`, `DIA.`, `C TO C`, `TYP.` */
export function acceptTerm(reader: TokenReader): { term: FigureTerm; token: Token } | undefined {
  const token = reader.peek()
  if (token.kind === 'diameter') return { term: 'diameter', token: reader.take() }
  if (token.kind !== 'word') return undefined
  const centres = centresLength(reader)
  if (centres > 0) return { term: 'centres', token: reader.take(centres) }
  const term = TERMS.get(token.text)
  return term === undefined ? undefined : { term, token: reader.take() }
}
