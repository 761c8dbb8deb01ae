/**
 * One independent cause of error. Two uncertain numbers are correlated exactly as far as they share sources.
 */
export interface Source {
  /** Order of creation; term lists are kept sorted by it so that they merge in one pass. */
  readonly order: number
  /** What a person is told the contribution comes from, e.g. `picking of M12`. */
  readonly label: string
  /** The estimate of variance behind it; several sources may rest on one. */
  readonly estimate: VarianceEstimate
  /** Distribution of its error; first-order propagation needs the variance only, Monte Carlo all of it. */
  readonly shape: DistributionShape
}

export type DistributionShape = 'normal' | 'rectangular'

/** An estimate of variance and what it is worth; Infinity when the variance is taken as known (Type B). */
export interface VarianceEstimate {
  readonly dof: number
}

/** A variance that is taken as known. */
export const KNOWN: VarianceEstimate = { dof: Number.POSITIVE_INFINITY }

// An identity, as Symbol() is one: no result depends on its value, only on which sources are the same.
let created = 0

/** A new source, independent of every other. */
export function newSource(
  label: string,
  estimate: VarianceEstimate = KNOWN,
  shape: DistributionShape = 'normal',
): Source {
  return { order: created++, label, estimate, shape }
}
