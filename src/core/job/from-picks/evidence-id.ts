import type { Basis, Evidence } from '../model/types.ts'

const LETTERS: Record<Basis, string> = { printed: 'p', scaled: 's', found: 'f', derived: 'd' }

/** An id for new evidence that none beside it has: p1, p2, s1 and so on. */
export function evidenceId(others: readonly Evidence[], basis: Basis): string {
  const taken = new Set(others.map(({ id }) => id))
  for (let n = 1; ; n++) {
    const id = `${LETTERS[basis]}${n}`
    if (!taken.has(id)) return id
  }
}
