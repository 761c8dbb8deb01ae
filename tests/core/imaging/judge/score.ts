/** How one find came out. */
export interface Outcome {
  /** Mean square of the error, pixels²: across the stroke, along all of it. */
  square: number
  /** The same of the best estimator: the Cramér–Rao bound, pixels². */
  bound: number
  /** Sum of squared errors in units of the stated uncertainty, and its degrees of freedom. */
  chiSquare: number
  dof: number
}

export interface Score {
  cases: number
  /** Strokes that were there and not found. */
  missed: number
  /** Root mean squares, pixels. */
  error: number
  bound: number
  /** Root mean square of error over bound, case by case. */
  overBound: number
  /** Root mean square of error over what is allowed: factor times the bound, or a floor where that is more. */
  overAllowed: number
  /** Chi-square per degree of freedom of the errors in units of the stated uncertainty. */
  chiSquare: number
  /** Finds more than five times their stated uncertainty out. */
  wild: number
}

export interface Allowed {
  factor: number
  /** Pixels. */
  floor: number
}

export const GREY: Allowed = { factor: 1.5, floor: 0.05 }
export const ONE_BIT: Allowed = { factor: 0, floor: 0.3 }
/** With a fifth of the stroke hidden: a further factor 1.5. */
export const PARTLY_HIDDEN: Allowed = { factor: 1.5 * 1.5, floor: 0.05 * 1.5 }

/** @param outcomes null where nothing was found */
export function score(outcomes: readonly (Outcome | null)[], { factor, floor }: Allowed): Score {
  const found = outcomes.filter((o) => o !== null)
  const mean = (of: (o: Outcome) => number) => found.reduce((sum, o) => sum + of(o), 0) / found.length
  const allowed = (o: Outcome) => Math.max(factor * factor * o.bound, floor * floor)
  return {
    cases: outcomes.length,
    missed: outcomes.length - found.length,
    error: Math.sqrt(mean((o) => o.square)),
    bound: Math.sqrt(mean((o) => o.bound)),
    overBound: Math.sqrt(mean((o) => o.square / o.bound)),
    overAllowed: Math.sqrt(mean((o) => o.square / allowed(o))),
    chiSquare: mean((o) => o.chiSquare) / mean((o) => o.dof),
    wild: found.filter((o) => o.chiSquare > 25 * o.dof).length,
  }
}

/** One row of a table, figures rounded for reading. */
export function row(name: string, s: Score): Record<string, string | number> {
  const round = (x: number) => Number(x.toPrecision(3))
  return {
    class: name,
    cases: s.cases,
    missed: s.missed,
    'rms error px': round(s.error),
    'bound px': round(s.bound),
    'error/bound': round(s.overBound),
    'error/allowed': round(s.overAllowed),
    'chi²/dof': round(s.chiSquare),
    'over 5 sigma': s.wild,
  }
}
