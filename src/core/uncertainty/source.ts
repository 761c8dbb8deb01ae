/**
 * One independent cause of error. Two uncertain numbers are correlated exactly as far as they share sources.
 */
export interface Source {
  /** Where it stands among all sources; term lists are kept sorted by it so that they merge in one pass. */
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

// An identity, as Symbol() is one: no result depends on its value, only on which sources are the same. Sums are taken in
// its order, and come out the same to the last bit where that is the same.
let created = 0

/** The place at which sources are being made just now, none where it is no number, and how many were. */
let place = Number.NaN
let made = 0

/** As many sources stand in order at one place; those that are too many come after all others. */
const AT_ONE_PLACE = 2 ** 16

/** Beyond it, what stands at one place could no longer be told apart in the 53 bits that a number has. */
const LAST = 2 ** 37

/** A new source, independent of every other. */
export function newSource(
  label: string,
  estimate: VarianceEstimate = KNOWN,
  shape: DistributionShape = 'normal',
): Source {
  const order = place >= 0 && made < AT_ONE_PLACE ? place + made++ / AT_ONE_PLACE : created++
  return { order, label, estimate, shape }
}

/** Sets places in the order of sources aside for `sourcesAt`: so many from the one that is given back. */
export function setPlacesAside(howMany: number): number {
  const first = created
  created += howMany
  if (created > LAST)
    throw new RangeError('No more sources of error can be told apart: begin the program anew.')
  return first
}

/**
 * Makes something whose sources stand at a place that was set aside, one after the other. Nothing that has sources of the
 * same place may be combined with it, unless it is the same thing.
 */
export function sourcesAt<A, T>(at: number, make: (of: A) => T, of: A): T {
  const [outer, before] = [place, made]
  place = at
  made = 0
  try {
    return make(of)
  } finally {
    place = outer
    made = before
  }
}
