import type { IdKind } from './id-form.ts'
import type { Mint } from './mint-ids.ts'

/** What is counted apart: its kind, and the letter of its ids when those were numbers (M12, p1). */
const COUNTED = {
  sheet: ['sheet', 'S'],
  view: ['view', 'V'],
  mark: ['mark', 'M'],
  reference: ['reference', 'R'],
  relation: ['relation', 'Q'],
  note: ['note', 'N'],
  printed: ['evidence', 'p'],
  scaled: ['evidence', 's'],
  found: ['evidence', 'f'],
  derived: ['evidence', 'd'],
} as const satisfies Record<string, readonly [IdKind, string]>

/** What is counted apart: most things by their kind, evidence by its basis. */
export type Counted = keyof typeof COUNTED

export const isCounted = (word: string): word is Counted => Object.hasOwn(COUNTED, word)

/** Something that goes by an id and, where that was minted, has the number that people call it by. */
export interface Numbered {
  readonly id: string
  readonly number?: number | undefined
}

/** What something new goes by: an id that no other copy of the job gives, and the number of its label. */
export interface Identity {
  id: string
  number: number
}

/** Numbers above this are no labels: a person counted otherwise, or a file is damaged. */
const HIGHEST = 1e12

function numberIn({ id, number }: Numbered, letter: string): number {
  const counted = number ?? Number(id.startsWith(letter) ? /^\d+$/.exec(id.slice(letter.length))?.[0] : 0)
  return counted < HIGHEST ? counted : 0
}

/**
 * Gives what new things go by, one after the other. Their numbers go on after the highest that is taken. Another copy
 * of the job may give the same number, and never the same id.
 * @param others those beside which they will stand; of evidence, all of its dimension
 */
export function newIdentities(counted: Counted, others: Iterable<Numbered>, mint: Mint): () => Identity {
  const [kind, letter] = COUNTED[counted]
  let number = 0
  for (const other of others) {
    if (kind === 'evidence' && 'basis' in other && other.basis !== counted) continue
    number = Math.max(number, numberIn(other, letter))
  }
  return () => ({ id: mint(kind), number: ++number })
}

/** What one new thing goes by. */
export const newIdentity = (counted: Counted, others: Iterable<Numbered>, mint: Mint): Identity =>
  newIdentities(counted, others, mint)()
