import type { Conventions } from '../../job/model/conventions.ts'
import type { Dimension, Evidence } from '../../job/model/types.ts'
import { NotationError } from '../../quantity/notation/notation-error.ts'
import type { QuantityKind } from '../../quantity/quantity-kind.ts'
import { repeatedObservations } from '../../uncertainty/type-a.ts'
import { type Reading, readReading } from './found-reading.ts'

type Found = Extract<Evidence, { basis: 'found' }>

/** How one set of readings on the original scatters about its own mean. */
export interface FoundSpread {
  evidence: Found
  /** What it is pooled with: all of one pool are of one kind, and taken with one instrument. */
  pool: string
  kind: QuantityKind
  /** Sum of the squares about the mean, mm² or rad² or mm⁴. */
  squares: number
  /** One less than there are readings. */
  dof: number
  /** Last graduation of the most finely written reading, mm or radians or mm². */
  step: number
}

/**
 * Where no instrument is named, each dimension has a pool of its own: nothing says that others were measured with the
 * same.
 */
export const poolOf = ({ instrument }: Found, { kind, name }: Pick<Dimension, 'kind' | 'name'>): string =>
  instrument === undefined ? `${kind} in ${name}` : `${kind} by ${instrument}`

/** Readings that are written so much coarser than the finest of a set say nothing of how it scatters. Common practice, no source. */
const COARSER = 4

/**
 * Of readings without instrument, those that are written about as finely as the finest; all of them where a coarser one
 * is not what the finer ones come to, as far as it is written.
 */
export function finelyWritten<R extends Reading>(readings: readonly R[]): readonly R[] {
  const finest = Math.min(...readings.map(({ graduation }) => graduation))
  const fine = readings.filter(({ graduation }) => graduation <= COARSER * finest)
  if (fine.length === readings.length) return readings
  const { mean } = repeatedObservations(fine.map(({ value }) => value))
  return readings.every(({ value, graduation }) => Math.abs(value - mean) <= COARSER * finest + graduation)
    ? fine
    : readings
}

const NONE: readonly FoundSpread[] = []

/** Of each set of a dimension's readings that counts and can be read; the evidence itself says what can't. */
export function foundSpreads(dimension: Dimension, conventions: Conventions): readonly FoundSpread[] {
  let spreads: FoundSpread[] | undefined
  for (const evidence of dimension.evidence) {
    if (evidence.basis !== 'found' || evidence.withdrawn !== undefined) continue
    const readings = readingsOf(evidence, dimension, conventions)
    if (readings.length === 0) continue
    const telling = evidence.instrument === undefined ? finelyWritten(readings) : readings
    const { s, dof } = repeatedObservations(telling.map(({ value }) => value))
    const step = Math.min(...telling.map(({ graduation }) => graduation))
    spreads ??= []
    spreads.push({
      evidence,
      pool: poolOf(evidence, dimension),
      kind: dimension.kind,
      squares: s * s * dof,
      dof,
      step,
    })
  }
  return spreads ?? NONE
}

/** Empty where a reading can't be read. */
function readingsOf(evidence: Found, { kind }: Dimension, conventions: Conventions): Reading[] {
  try {
    return evidence.readings.map((text) => readReading(text, kind, conventions))
  } catch (error) {
    if (error instanceof NotationError) return []
    throw error
  }
}
