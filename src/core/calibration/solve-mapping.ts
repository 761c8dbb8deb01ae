import type { Matrix } from 'ml-matrix'
import { addScaled } from '../linear-algebra/add-to.ts'
import { element } from '../linear-algebra/element.ts'
import type { Mapping } from '../mapping/mapping.ts'
import { parameterSize, worstRelative } from '../mapping/parameter.ts'
import type { ViewMapping } from '../mapping/view-mapping.ts'
import { type Adjustment, quadraticForm } from '../uncertainty/adjustment.ts'
import { effectiveDof } from '../uncertainty/coverage.ts'
import type { Draw } from '../uncertainty/draws.ts'
import type { Source } from '../uncertainty/source.ts'
import type { Uncertain } from '../uncertainty/uncertain.ts'
import { reason } from '../words/core-words.ts'
import { CalibrationError } from './calibration-error.ts'
import { type Closing, findClosings } from './closings.ts'
import { figureShares } from './closure-fit.ts'
import { spreadOfDirections, whatIsMissing } from './degeneracy.ts'
import { type Linearised, linearise, tryLinearise } from './linearise.ts'
import { adjustReduced, type Reduction, reduction } from './reduction.ts'
import type { Equation, StatedSize } from './reference.ts'
import { startingScale } from './starting-scale.ts'

/** The least-squares solution of a mapping. */
export interface Solution {
  theta: Uncertain[]
  /** Observed − computed for each equation, mm. */
  residuals: number[]
  /** Of what does not follow from other figures. */
  chi2: number
  /** Effective degrees of freedom of each residual's variance; Infinity where it is known. */
  dofs: number[]
  /** Independent equations. */
  rank: number
  /** Of those beyond the parameters. */
  dof: number
  /** What else the figures have to fulfil among themselves. */
  closings: readonly Closing[]
  adjustment: Adjustment
  jacobian: Matrix
  /** What the residual of each equation is uncertain by, as the parameters have it. */
  errors: ReadonlyMap<Equation, ResidualErrors>
}

/** What a residual is uncertain by: what each source contributes, mm. */
export interface ResidualErrors {
  sources: readonly Source[]
  errors: Float64Array
}

/** What is known of a solution before it is looked for. */
export interface KnownBefore {
  /** What closes. */
  closings?: readonly Closing[]
  /**
   * What residuals are uncertain by, as another solution of nearly the same parameters has it: taken over, it moves what
   * rests on either in one proportion, so that the two have as few sources between them as one has.
   */
  errors?: Solution['errors']
}

const MAX_STEPS = 60
/** Damping at which no step goes anywhere any more. */
const HOPELESS_DAMPING = 1e10
/** Relative change of the parameters; far below any uncertainty, well above rounding. */
const SETTLED_BELOW = 1e-9
/** First-order propagation is not to be trusted where a scale is known worse than this. */
export const WORST_RELATIVE_UNCERTAINTY = 0.1
/** Parallel references, however finely picked, have a spread of rounding errors only. */
const SMALLEST_SPREAD = 1e-4

/**
 * Solves for the parameters of a mapping from stated sizes.
 * Gauss–Newton on the true lengths, weighted by the full covariance of picks, draughting and stated sizes;
 * marks that several references share are correlated in it. Of sizes that close on themselves one follows from the
 * others; it does not count among the equations.
 * @throws CalibrationError naming what is missing or contradictory
 */
export function solveMapping(
  view: ViewMapping,
  sizes: readonly StatedSize[],
  draw?: Draw,
  before: KnownBefore = {},
): Solution {
  const equations = sizes.flatMap((size) => size.equations)
  const { mapping } = view
  if (equations.length === 0) {
    throw new CalibrationError(reason('calibration.no-references'))
  }
  const scale = startingScale(view, sizes, draw)
  const start = mapping.start(scale)
  const atStart = linearise(view, start, equations, draw)
  const closings = before.closings ?? findClosings(sizes, atStart)
  const shares = figureShares(sizes, closings, atStart.residuals)
  const asGiven = reduction(equations.length, closings, shares)
  if (asGiven.rank < start.length) {
    throw new CalibrationError(whatIsMissing(view, start, atStart.jacobian))
  }
  const found = descend({ view, equations, reduction: asGiven, scale, draw }, start, atStart)
  const { theta, state } = found
  const adjustment = adjustReduced(state, asGiven, 0)
  mustBeDetermined(view, scale, atStart, found, asGiven, adjustment)
  const errors = equations.map((equation, i) => takenOver(before.errors?.get(equation), state, i))
  return {
    theta: propagateParameters(theta, adjustment, { ...state, errors }),
    residuals: state.residuals,
    chi2: quadraticForm(adjustment.weight, state.residuals),
    dofs: state.errors.map((error) =>
      effectiveDof({ value: 0, sources: state.sources, coefficients: [...error] }),
    ),
    rank: asGiven.rank,
    dof: asGiven.rank - start.length,
    // How much of each figure a closing takes depends a little on the mapping.
    closings:
      before.closings === undefined && closings.length > 0 ? sameClosings(closings, sizes, state) : closings,
    adjustment,
    jacobian: state.jacobian,
    errors: new Map(
      equations.map((equation, i) => [equation, { sources: state.sources, errors: element(errors, i) }]),
    ),
  }
}

/** What a residual was uncertain by before, over the sources of a state; its own where there is nothing before. */
function takenOver(
  known: ResidualErrors | undefined,
  { sources, errors }: Linearised,
  i: number,
): Float64Array {
  if (known === undefined) return element(errors, i)
  const column = new Map(sources.map((source, k) => [source, k]))
  const out = new Float64Array(sources.length)
  known.sources.forEach((source, k) => {
    const at = column.get(source)
    if (at !== undefined) out[at] = element(known.errors, k)
  })
  return out
}

/** The closings as they are at the answer, as long as the same equations follow from others there. */
function sameClosings(
  closings: readonly Closing[],
  sizes: readonly StatedSize[],
  state: Linearised,
): readonly Closing[] {
  const there = findClosings(sizes, state)
  const same =
    there.length === closings.length && there.every(({ row }, k) => row === element(closings, k).row)
  return same ? there : closings
}

interface Descent {
  theta: number[]
  state: Linearised
  settled: boolean
}

/** What a descent goes by. */
interface Slope {
  view: ViewMapping
  equations: readonly Equation[]
  reduction: Reduction
  /** mm per pixel, for the size of a step. */
  scale: number
  draw: Draw | undefined
}

/** Damped Gauss–Newton (Levenberg–Marquardt) from the start; the weights are renewed at every step. */
function descend(
  { view, equations, reduction: given, scale, draw }: Slope,
  start: number[],
  atStart: Linearised,
): Descent {
  let theta = start
  let state = atStart
  let damping = 0
  for (let i = 0; i < MAX_STEPS && damping <= HOPELESS_DAMPING; i++) {
    const step = adjustReduced(state, given, damping)
    if (step === null) {
      damping = Math.max(damping * 10, 1e-9)
      continue
    }
    const size = Math.max(
      ...view.mapping.parameters.map((p, k) => Math.abs(element(step.step, k)) / parameterSize(p, scale)),
    )
    // At the answer the objective only jitters by rounding, so the step alone says that it is reached.
    if (damping === 0 && size < SETTLED_BELOW) return { theta, state, settled: true }
    const before = quadraticForm(step.weight, state.residuals)
    const trial = rightWayRound(
      view.mapping,
      theta.map((t, k) => t + element(step.step, k)),
    )
    const next = tryLinearise(view, trial, equations, draw)
    const after = next === null ? Number.POSITIVE_INFINITY : quadraticForm(step.weight, next.residuals)
    if (next !== null && after <= before * (1 + 1e-9) + 1e-12) {
      theta = trial
      state = next
      damping = damping < 1e-9 ? 0 : damping / 10
    } else {
      damping = Math.max(damping * 10, 1e-6)
    }
  }
  return { theta, state, settled: false }
}

/** A long step can come out on the mirrored side, where two scales give the same lengths; no sheet is drawn to that. */
const rightWayRound = ({ parameters }: Mapping, theta: readonly number[]): number[] =>
  theta.map((t, k) => (parameters[k]?.role === 'scale' ? Math.abs(t) : t))

/** Refuses, in words, a solution that is not one. */
function mustBeDetermined(
  view: ViewMapping,
  scale: number,
  atStart: Linearised,
  { theta, state, settled }: Descent,
  given: Reduction,
  adjustment: Adjustment | null,
): asserts adjustment is Adjustment {
  const { mapping } = view
  const determined = isDetermined(mapping, scale, state.jacobian)
  const exactlyEnough = given.rank === theta.length
  // Contradictory sizes end where the mapping collapses, which looks like too few; the start tells them apart.
  if (exactlyEnough && !(settled && determined) && clearlyDetermined(mapping, scale, atStart, given)) {
    throw new CalibrationError(reason('calibration.contradictory', { mapping: mapping.kind }))
  }
  const worst = adjustment === null ? Infinity : worstRelativeUncertainty(mapping, scale, adjustment)
  if (adjustment === null || !determined || !(worst < 1)) {
    throw new CalibrationError(whatIsMissing(view, theta, state.jacobian))
  }
  if (!settled) {
    throw new CalibrationError(reason('calibration.not-settled', { mapping: mapping.kind }))
  }
  if (worst > WORST_RELATIVE_UNCERTAINTY) {
    throw new CalibrationError(reason('calibration.too-uncertain', { share: worst }))
  }
}

const isDetermined = (mapping: Mapping, scale: number, jacobian: Matrix): boolean =>
  spreadOfDirections(mapping, scale, jacobian) > SMALLEST_SPREAD

/** Determined by more than the picks' own errors: parallel lines picked by hand are never quite parallel. */
function clearlyDetermined(mapping: Mapping, scale: number, state: Linearised, given: Reduction): boolean {
  const adjustment = adjustReduced(state, given, 0)
  return (
    adjustment !== null &&
    isDetermined(mapping, scale, state.jacobian) &&
    worstRelativeUncertainty(mapping, scale, adjustment) <= WORST_RELATIVE_UNCERTAINTY
  )
}

const worstRelativeUncertainty = (mapping: Mapping, scale: number, { covariance }: Adjustment): number =>
  worstRelative(mapping.parameters, scale, covariance.diagonal().map(Math.sqrt))

function propagateParameters(theta: number[], { gain }: Adjustment, state: Linearised): Uncertain[] {
  // All parameters share one list of sources, which makes combining them quick.
  const sources: readonly Source[] = state.sources
  return theta.map((value, k) => {
    const coefficients = sources.map(() => 0)
    state.errors.forEach((error, row) => {
      addScaled(coefficients, gain.get(k, row), error)
    })
    return { value, sources, coefficients }
  })
}
