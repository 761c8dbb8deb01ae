import type { Conventions } from '../../job/model/conventions.ts'
import type { Instrument } from '../../job/model/types.ts'
import { NotationError } from '../../quantity/notation/notation-error.ts'
import { readReading } from './found-reading.ts'
import type { FoundSpread } from './found-spread.ts'

/** What the instrument of a set of readings may be off by at most, mm or radians; 0 where nothing is stated. */
export type LimitOf = (spread: FoundSpread) => number

/** Of the instruments of a job. */
export function instrumentLimits(instruments: readonly Instrument[], conventions: Conventions): LimitOf {
  const known = new Map(instruments.map((one) => [one.id, one]))
  const limits = new Map<string, number>()
  return ({ pool, kind, evidence: { instrument } }) => {
    const before = limits.get(pool)
    if (before !== undefined) return before
    const stated = instrument === undefined ? undefined : known.get(instrument)?.limit
    const limit = stated === undefined ? 0 : limitIn(stated, kind, conventions)
    limits.set(pool, limit)
    return limit
  }
}

/** A limit of another kind of quantity, degrees for a length, says nothing of it. */
function limitIn(text: string, kind: FoundSpread['kind'], conventions: Conventions): number {
  try {
    return readReading(text, kind, conventions).value
  } catch (error) {
    if (error instanceof NotationError) return 0
    throw error
  }
}
