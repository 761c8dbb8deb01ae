import type { Conventions } from '../../job/model/conventions.ts'
import type { Dimension, Evidence } from '../../job/model/types.ts'
import { NotationError } from '../../quantity/notation/notation-error.ts'
import type { VarianceEstimate } from '../../uncertainty/source.ts'
import { repeatedObservations } from '../../uncertainty/type-a.ts'
import { readReading } from './found-reading.ts'

/** How readings with one instrument scatter about their own means. */
export interface FoundScatter {
  /** Experimental standard deviation of one reading, mm or radians or mm². */
  s: number
  estimate: VarianceEstimate
}

/**
 * Pools the scatter of all readings of a dimension that were taken with one instrument: two readings tell little of
 * their scatter, and a set that happens to agree must not outweigh the others.
 * Keyed by instrument; undefined stands for none named.
 * Source: pooled variance, JCGM 100:2008, H.3.6 and the note to 4.2.4.
 */
export function foundScatter(
  dimension: Dimension,
  conventions: Conventions,
): Map<string | undefined, FoundScatter> {
  const pools = new Map<string | undefined, { squares: number; dof: number }>()
  for (const evidence of dimension.evidence) {
    if (evidence.basis !== 'found' || evidence.withdrawn !== undefined) continue
    const values = readingsOf(evidence, dimension, conventions)
    if (values.length < 2) continue
    const { s, dof } = repeatedObservations(values)
    const pool = pools.get(evidence.instrument) ?? { squares: 0, dof: 0 }
    pools.set(evidence.instrument, { squares: pool.squares + s * s * dof, dof: pool.dof + dof })
  }
  const out = new Map<string | undefined, FoundScatter>()
  for (const [instrument, { squares, dof }] of pools) {
    if (squares > 0) out.set(instrument, { s: Math.sqrt(squares / dof), estimate: { dof } })
  }
  return out
}

/** Empty where a reading can't be read; the evidence itself says so. */
function readingsOf(
  evidence: Extract<Evidence, { basis: 'found' }>,
  { kind }: Dimension,
  conventions: Conventions,
): number[] {
  try {
    return evidence.readings.map((text) => readReading(text, kind, conventions).value)
  } catch (error) {
    if (error instanceof NotationError) return []
    throw error
  }
}
