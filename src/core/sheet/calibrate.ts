import { correlatedNumbers } from '../uncertainty/correlated.ts'
import { standardUncertainty } from '../uncertainty/covariance.ts'
import { chiSquareExceeds } from '../uncertainty/distributions.ts'
import { type Draw, realise } from '../uncertainty/draws.ts'
import { propagate, type Uncertain } from '../uncertainty/uncertain.ts'
import { CalibrationError } from './calibration-error.ts'
import { parameterSize } from './mapping.ts'
import { observe, type ViewMapping } from './observe.ts'
import type { ReferencePart, StatedSize } from './reference.ts'
import { normalisedResiduals, SUSPECT_ABOVE } from './snooping.ts'
import { type Solution, solveMapping, WORST_RELATIVE_UNCERTAINTY } from './solve-mapping.ts'

/** How one stated size fits the others. mm. */
export interface ReferenceCheck {
  id: string
  part?: ReferencePart
  stated: number
  /** What the calibration makes of it. */
  fitted: number
  /** stated − fitted */
  residual: number
  /** Normalised residual among the references used, or for one set aside among all; 0 when nothing checks it. */
  w: number
  suspect: boolean
  /** Left out of the calibration, because it alone explains the misfit. */
  setAside: boolean
}

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
  problem?: string
}

const MISFIT_BELOW = 0.05

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
  const misfit = !fits(solution)
  const enlarged = misfit ? Math.sqrt(solution.chi2 / solution.dof) : 1
  const excess = misfit ? excessOf(solution, enlarged, label) : []
  const theta = misfit ? widen(solution.theta, excess) : solution.theta
  mustStayFirstOrder(view, theta, enlarged)
  const references = checks(
    view,
    sizes,
    testedBy(sizes, w, used, solution, culprit),
    theta,
    culprit?.reference,
  )
  const problem = misfitInWords(references, enlarged, p)
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

/** Refuses a scale that contradictory references leave so uncertain that first-order propagation would mislead. */
function mustStayFirstOrder(view: ViewMapping, theta: readonly Uncertain[], enlarged: number): void {
  if (enlarged === 1) return
  const scale = Math.abs(theta[0]?.value ?? 1)
  const worst = Math.max(
    ...theta.map((t, k) => standardUncertainty(t) / parameterSize(view.mapping, k, scale)),
  )
  if (worst <= WORST_RELATIVE_UNCERTAINTY) return
  throw new CalibrationError(
    `its references disagree so much that a scale or tilt would be uncertain by ${(100 * worst).toFixed(0)} %: misread figures, or marks on the wrong features? Check their sizes and marks, and add a reference that you are sure of.`,
  )
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

/** Probability of a chi-square at least as large; null when nothing is redundant. */
const probability = ({ chi2, dof }: Solution): number | null => (dof > 0 ? chiSquareExceeds(chi2, dof) : null)

const fits = (solution: Solution): boolean => (probability(solution) ?? 1) >= MISFIT_BELOW

interface Culprit {
  reference: string
  /** The solution without it. */
  rest: Solution
}

/** A rest that fits worse than this has more wrong with it than one reference. */
const REST_HOPELESS_BELOW = 0.001

/** Chi-square by which the second-best explanation must be worse: 1 % with one degree of freedom. */
const CLEARLY_WORSE_BY = 6.63

/** The one suspect reference without which the others fit; null when there is none, or another would do as well. */
function soleCulprit(
  view: ViewMapping,
  sizes: readonly StatedSize[],
  w: readonly number[],
  all: Solution,
): Culprit | null {
  // With one redundant size every reference it involves explains the misfit as well as any other.
  if (all.dof < 2) return null
  const suspects = new Set(sizes.filter((_, i) => isSuspect(w[i] as number)).map((s) => s.reference))
  const [best, second] = [...suspects]
    .flatMap((reference): Culprit[] => {
      const rest = withoutReference(view, sizes, reference)
      return rest === null ? [] : [{ reference, rest }]
    })
    .sort((a, b) => a.rest.chi2 - b.rest.chi2)
  if (best === undefined || (probability(best.rest) ?? 1) < REST_HOPELESS_BELOW) return null
  const clear = second === undefined || second.rest.chi2 - best.rest.chi2 > CLEARLY_WORSE_BY
  return clear ? best : null
}

const isSuspect = (w: number): boolean => Math.abs(w) > SUSPECT_ABOVE

/** w of the reference set aside as all references test it, of the others as they test one another. */
function testedBy(
  sizes: readonly StatedSize[],
  w: readonly number[],
  used: readonly StatedSize[],
  solution: Solution,
  culprit: Culprit | null,
): readonly number[] {
  if (culprit === null) return w
  const among = solution.dof > 0 ? normalisedResiduals(used, solution) : used.map(() => 0)
  return sizes.map(
    (size, i) => (size.reference === culprit.reference ? w[i] : among[used.indexOf(size)]) as number,
  )
}

function withoutReference(
  view: ViewMapping,
  sizes: readonly StatedSize[],
  reference: string,
): Solution | null {
  try {
    return solveMapping(view, retained(sizes, reference))
  } catch (error) {
    if (error instanceof CalibrationError) return null
    throw error
  }
}

const retained = (sizes: readonly StatedSize[], culprit: string | undefined): readonly StatedSize[] =>
  culprit === undefined ? sizes : sizes.filter(({ reference }) => reference !== culprit)

/**
 * What enlarges the covariance of the parameters to factor² times itself: sources of their own, so that
 * what the parameters share with the marks is left as it is; worth the redundancy they were estimated from.
 */
function excessOf(solution: Solution, factor: number, label: string): Uncertain[] {
  return correlatedNumbers(
    solution.theta.map(() => 0),
    solution.adjustment.covariance
      .clone()
      .mul(factor * factor - 1)
      .to2DArray(),
    `misfit of the references of ${label}`,
    { dof: solution.dof },
  )
}

function widen(theta: readonly Uncertain[], excess: readonly Uncertain[]): Uncertain[] {
  const widened = theta.map((t, k) => propagate(t.value, [t, excess[k] as Uncertain], [1, 1]))
  // The merged lists are alike; one and the same array makes combining them quick.
  const { sources } = widened[0] as Uncertain
  return widened.map((t) => ({ ...t, sources }))
}

function checks(
  view: ViewMapping,
  sizes: readonly StatedSize[],
  w: readonly number[],
  theta: readonly Uncertain[],
  setAside: string | undefined,
): ReferenceCheck[] {
  const values = theta.map((t) => t.value)
  return sizes.map((size, i) => {
    const stated = mean(size.equations.map((e) => e.stated.value))
    const fitted = mean(size.equations.map((e) => observe(view, values, e.features, e.measure).value))
    const wi = w[i] as number
    return {
      id: size.reference,
      ...(size.part === undefined ? {} : { part: size.part }),
      stated,
      fitted,
      residual: stated - fitted,
      w: wi,
      suspect: isSuspect(wi),
      setAside: size.reference === setAside,
    }
  })
}

const mean = (values: readonly number[]): number => values.reduce((s, v) => s + v, 0) / values.length

function misfitInWords(
  references: readonly ReferenceCheck[],
  enlarged: number,
  p: number | null,
): string | null {
  const suspects = references.filter((r) => r.suspect)
  const names = [...new Set(suspects.map(nameOf))]
  const list = names.length > 1 ? `${names.slice(0, -1).join(', ')} and ${names.at(-1)}` : names[0]
  const setAside = references.find((r) => r.setAside)
  if (setAside !== undefined) {
    const rest =
      enlarged > 1
        ? `the uncertainty of the scale is enlarged ${enlarged.toFixed(1)} times, because the rest do not quite agree either (${pInWords(p)}).`
        : 'the rest agree without it.'
    return `Reference ${nameOf(setAside)} does not fit the others: misread figure, or not to scale? It is left out of the calibration, and ${rest}`
  }
  if (enlarged > 1) {
    const suspicion = list === undefined ? '' : ` Look first at ${list}: misread figure, or not to scale?`
    return `The references do not agree within their uncertainties (${pInWords(p)}), so the uncertainty of the scale is enlarged ${enlarged.toFixed(1)} times.${suspicion}`
  }
  if (list === undefined) return null
  return names.length === 1
    ? `Reference ${list} does not fit the others: misread figure, or not to scale?`
    : `References ${list} do not fit one another: misread figures, or not to scale?`
}

/** A probability to one figure; below a thousandth the figure says no more. */
const pInWords = (p: number | null): string =>
  p !== null && p < 0.001 ? 'p < 0.001' : `p = ${p?.toPrecision(1)}`

const nameOf = ({ id, part }: ReferenceCheck): string => (part === undefined ? id : `${id} (${part})`)
