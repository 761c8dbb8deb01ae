import type { Matrix } from 'ml-matrix'
import { element } from '../linear-algebra/element.ts'
import type { ViewMapping } from '../mapping/view-mapping.ts'
import { type Draw, realise } from '../uncertainty/draws.ts'
import { propagate, type Uncertain } from '../uncertainty/uncertain.ts'
import type { CoreReason } from '../words/core-words.ts'
import { excessOf, figureExcess, mustStayFirstOrder, widen } from './birge-ratio.ts'
import type { Closing } from './closings.ts'
import { type ClosureCheck, closureChecks } from './closure-checks.ts'
import { isChecked, normalisedResiduals } from './data-snooping.ts'
import { type Alternative, explanations, sideBySide, without } from './explanations.ts'
import { fits, probability } from './goodness-of-fit.ts'
import { misfit } from './misfit.ts'
import { type Culprit, soleCulprit, suspectsOf, testedBy } from './outlier-identification.ts'
import type { StatedSize } from './reference.ts'
import { type ReferenceCheck, referenceChecks } from './reference-checks.ts'
import { residualTest } from './residual-test.ts'
import { type Solution, solveMapping } from './solve-mapping.ts'

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
  /** Which of them follow from one another whatever the picks; they count once. */
  closings: readonly Closing[]
  /** What the residual of each equation is uncertain by. */
  errors: Solution['errors']
  /** Change of each parameter by the stated size of each equation of those used, p × n. */
  gain: Matrix
  /** Whether stated sizes that close on themselves add up; a reference that was set aside among them. */
  closures: readonly ClosureCheck[]
  /** Factor by which uncertainties were enlarged; 1 when the references fit. */
  enlarged: number
  /** What misfit and figures that do not close add to each parameter, mean 0; none when all fit and close. */
  excess: readonly Uncertain[]
  /** What may be wrong where nothing decides, likeliest first: with each left out, the rest agree. */
  alternatives: readonly Alternative[]
  /** What a person should know of references that do not fit. */
  problem?: CoreReason
}

/** What is known beside the stated sizes of a view. */
export interface CalibratedWith {
  /** A calibration of the same sizes and nearly the same parameters, to be uncertain by the same. */
  before?: Pick<Calibration, 'errors'>
  /** Standard uncertainty of how the sheet is stretched as paper is, a share: of two misfits it tells the likelier. */
  paper?: number
}

/**
 * Calibrates a view from its references.
 * @param view mapping, frame and draughting error (mm in true size)
 * @param sizes the stated sizes, in the order of the references
 * @param label what enlargement is called in a budget
 * @throws CalibrationError, in words, when the references do not determine the mapping
 */
export function calibrate(
  view: ViewMapping,
  sizes: readonly StatedSize[],
  label = 'view',
  { before, paper }: CalibratedWith = {},
): Calibration {
  const errors = before?.errors
  const all = solveMapping(view, sizes, undefined, errors === undefined ? {} : { errors })
  const test = isChecked(all) ? residualTest(sizes, all) : null
  const w = test === null ? sizes.map(() => 0) : normalisedResiduals(sizes, all, test)
  const closures = closureChecks(sizes, all)
  const agrees = fits(all) && closures.every((one) => one.closes)
  const suspects = agrees || test === null ? NOBODY : suspectsOf(sizes, w)
  const ways =
    test === null || suspects.size === 0
      ? []
      : explanations({ view, sizes, all, test, w, suspects, paper, errors })
  const culprit = soleCulprit(all, ways)
  const solution = culprit?.rest ?? all
  const used = without(sizes, leftOutOf(culprit))
  const p = probability(solution)
  const misfits = !fits(solution)
  const enlarged = misfits ? Math.sqrt(solution.chi2 / solution.dof) : 1
  const ofMisfit = misfits ? excessOf(solution, enlarged, label) : null
  const ofFigures = figureExcess(used, solution, label)
  const excess = together(ofMisfit, ofFigures)
  const theta = excess.length > 0 ? widen(solution.theta, excess) : solution.theta
  if (excess.length > 0) mustStayFirstOrder(view, theta)
  const references = referenceChecks(
    view,
    sizes,
    testedBy(sizes, w, used, solution, culprit),
    theta,
    culprit?.reference,
  )
  const alternatives = sideBySide(ways, culprit?.reference)
  const problem = misfit(references, alternatives, enlarged, p)
  return {
    view,
    theta,
    chi2: solution.chi2,
    dof: solution.dof,
    p,
    references,
    used,
    closings: solution.closings,
    errors: solution.errors,
    gain: solution.adjustment.gain,
    closures,
    enlarged,
    excess,
    alternatives,
    ...(problem === null ? {} : { problem }),
  }
}

const NOBODY: ReadonlySet<string> = new Set()

const leftOutOf = (culprit: Culprit | null): string[] => (culprit === null ? [] : [culprit.reference])

/** Both, where there are two. */
function together(one: Uncertain[] | null, other: Uncertain[] | null): Uncertain[] {
  if (one === null || other === null) return one ?? other ?? []
  return one.map((x, k) => propagate(0, [x, element(other, k)], [1, 1]))
}

/**
 * The parameters as they would have come out with other errors: the whole calibration is solved again.
 * @throws CalibrationError as `calibrate`
 */
export function recalibrate(calibration: Calibration, draw: Draw): number[] {
  const { theta } = solveMapping(calibration.view, calibration.used, draw, {
    closings: calibration.closings,
  })
  return theta.map(({ value }, k) => {
    const excess = calibration.excess[k]
    return excess === undefined ? value : value + realise(excess, draw)
  })
}
