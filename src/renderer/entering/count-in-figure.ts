import type { Dimension, Evidence, Job } from '../../core/job/model/types.ts'
import { readFigures } from '../../core/ledger/evidence/figures.ts'
import { NotationError } from '../../core/quantity/notation/notation-error.ts'
import type { QuantityKind } from '../../core/quantity/quantity-kind.ts'

/** How many a figure says that there are; null where it says nothing of that, or can't be read. */
export function countIn(job: Job, text: string, kind: QuantityKind): number | null {
  if (text === '') return null
  const piece: Evidence = { id: 'printed', basis: 'printed', text, legibility: 'clear' }
  const figure = readFigures({ name: 'as_picked', label: '', kind, evidence: [piece] }, job).of(piece)
  return figure === undefined || figure instanceof NotationError ? null : (figure.count ?? null)
}

/** What a dimension holds of how many there are: of one, nothing is said. */
export const ofSoMany = (count: number): Pick<Dimension, 'count'> => (count === 1 ? {} : { count })
