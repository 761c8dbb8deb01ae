import type { Basis, Dimension } from '../../core/job/types.ts'

const LETTERS: Record<Basis, string> = { printed: 'p', scaled: 's', found: 'f', derived: 'd' }

/** An id for new evidence that no other of the dimension has: p1, p2, s1 and so on. */
export function evidenceId({ evidence }: Dimension, basis: Basis): string {
  const taken = new Set(evidence.map(({ id }) => id))
  for (let n = 1; ; n++) {
    const id = `${LETTERS[basis]}${n}`
    if (!taken.has(id)) return id
  }
}
