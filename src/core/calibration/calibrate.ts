import type { ViewMapping } from '../mapping/view-mapping.ts'
import { type Draw, realise } from '../uncertainty/draws.ts'
import type { Uncertain } from '../uncertainty/uncertain.ts'
import type { CoreReason } from '../words/core-words.ts'
import { excessOf, mustStayFirstOrder, widen } from './birge-ratio.ts'
import { normalisedResiduals } from './data-snooping.ts'
import { fits, probability } from './goodness-of-fit.ts'
import { misfit } from './misfit.ts'
import { retained, soleCulprit, testedBy } from './outlier-identification.ts'
import type { StatedSize } from './reference.ts'
import { type ReferenceCheck, referenceChecks } from './reference-checks.ts'
import { solveMapping } from './solve-mapping.ts'

/** A view with its parameters as its references determine them, and how well the references agree. */
export interface Calibration {
  view: ViewMapping
  /** Parameters over the same sources as the marks of the references. */
  theta: Uncertain[]
  /** Over the references used. */
  chi2: number
  dof: number
  /** null when nothing is redundant. */
  p: number | null
  references: ReferenceCheck[]
  /** The stated sizes that the parameters rest on. */
  used: readonly StatedSize[]
  /** Factor by which uncertainties were enlarged; 1 when the references fit. */
  enlarged: number
  /** What the enlargement adds to each parameter, mean 0; none when the references fit. */
  excess: readonly Uncertain[]
  /** What a person should know of references that do not fit. */
  problem?: CoreReason
}

/**
 * Calibrates a view from its references.
 * @param view mapping, frame and draughting error (mm in true size)
 * @param sizes the stated sizes, in the order of the references
 * @param label what enlargement is called in a budget
 * @throws CalibrationError, in words, when the references do not determine the mapping
 */
export function calibrate(view: ViewMapping, sizes: readonly StatedSize[], label = 'view'): Calibration {
  const all = solveMapping(view, sizes)
  const w = all.dof > 0 ? normalisedResiduals(sizes, all) : sizes.map(() => 0)
  const culprit = fits(all) ? null : soleCulprit(view, sizes, w, all)
  const solution = culprit?.rest ?? all
  const used = retained(sizes, culprit?.reference)
  const p = probability(solution)
  const misfits = !fits(solution)
  const enlarged = misfits ? Math.sqrt(solution.chi2 / solution.dof) : 1
  const excess = misfits ? excessOf(solution, enlarged, label) : []
  const theta = misfits ? widen(solution.theta, excess) : solution.theta
  if (misfits) mustStayFirstOrder(view, theta)
  const references = referenceChecks(
    view,
    sizes,
    testedBy(sizes, w, used, solution, culprit),
    theta,
    culprit?.reference,
  )
  const problem = misfit(references, enlarged, p)
  return {
    view,
    theta,
    chi2: solution.chi2,
    dof: solution.dof,
    p,
    references,
    used,
    enlarged,
    excess,
    ...(problem === null ? {} : { problem }),
  }
}

/**
 * The parameters as they would have come out with other errors: the whole calibration is solved again.
 * @throws CalibrationError as `calibrate`
 */
export function recalibrate(calibration: Calibration, draw: Draw): number[] {
  const { theta } = solveMapping(calibration.view, calibration.used, draw)
  return theta.map(({ value }, k) => {
    const excess = calibration.excess[k]
    return excess === undefined ? value : value + realise(excess, draw)
  })
}
