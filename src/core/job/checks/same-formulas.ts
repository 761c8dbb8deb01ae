import { activeFormulas } from '../../formula/evaluation-order.ts'
import type { Dimension, Job } from '../model/types.ts'

function alike(a: Dimension, b: Dimension): boolean {
  if (a === b) return true
  if (a.name !== b.name || a.kind !== b.kind) return false
  const [before, after] = [activeFormulas(a), activeFormulas(b)]
  return before.length === after.length && before.every((text, i) => text === after[i])
}

/** Whether two jobs have the same formulas and relations over the same dimensions, so that both hold or neither. */
export function sameFormulas(a: Job, b: Job): boolean {
  if (a.relations !== b.relations) return false
  if (a.dimensions === b.dimensions) return true
  if (a.dimensions.length !== b.dimensions.length) return false
  return a.dimensions.every((dimension, i) => {
    const other = b.dimensions[i]
    return other !== undefined && alike(dimension, other)
  })
}
