import { Matrix } from 'ml-matrix'
import { GeometryError } from '../geometry/geometry-error.ts'
import { type Draw, realise } from '../uncertainty/draws.ts'
import type { Source } from '../uncertainty/source.ts'
import type { Uncertain } from '../uncertainty/uncertain.ts'
import { CalibrationError } from './calibration-error.ts'
import { spreadOfDirections, whatIsMissing } from './degeneracy.ts'
import { type Adjustment, adjust, quadraticForm } from './least-squares.ts'
import { type Mapping, parameterSize } from './mapping.ts'
import { type Observation, observe, type ViewMapping } from './observe.ts'
import type { Equation, StatedSize } from './reference.ts'

/** The least-squares solution of a mapping. */
export interface Solution {
  theta: Uncertain[]
  /** Observed − computed for each equation, mm. */
  residuals: number[]
  computed: number[]
  chi2: number
  dof: number
  adjustment: Adjustment
  jacobian: Matrix
  variance: Matrix
}

const MAX_STEPS = 60
/** Relative change of the parameters; far below any uncertainty, well above rounding. */
const SETTLED_BELOW = 1e-9
/** First-order propagation is not to be trusted where a scale is known worse than this. */
export const WORST_RELATIVE_UNCERTAINTY = 0.1
/** Parallel references, however finely picked, have a spread of rounding errors only. */
const SMALLEST_SPREAD = 1e-4

/**
 * Solves for the parameters of a mapping from stated sizes.
 * Gauss–Newton on the true lengths, weighted by the full covariance of picks, draughting and stated sizes;
 * marks that several references share are correlated in it.
 * @throws CalibrationError naming what is missing or contradictory
 */
export function solveMapping(view: ViewMapping, sizes: readonly StatedSize[], draw?: Draw): Solution {
  const equations = sizes.flatMap((size) => size.equations)
  const { mapping } = view
  const p = mapping.parameters.length
  const n = equations.length
  if (n === 0) {
    throw new CalibrationError('it has no references. Add the ends of a dimension whose true size is known.')
  }
  const scale = startingScale(view, sizes, draw)
  const start = mapping.start(scale)
  let theta = start
  if (n < p) {
    throw new CalibrationError(whatIsMissing(view, theta, linearise(view, theta, equations, draw).jacobian))
  }
  let damping = 0
  let settled = false
  let state = linearise(view, theta, equations, draw)
  for (let i = 0; i < MAX_STEPS && !settled; i++) {
    const step = adjust(state.jacobian, state.residuals, state.variance, damping)
    if (step === null) {
      damping = Math.max(damping * 10, 1e-9)
      continue
    }
    const size = Math.max(...step.step.map((s, k) => Math.abs(s) / parameterSize(mapping, k, scale)))
    // At the answer the objective only jitters by rounding, so the step alone says that it is reached.
    settled = damping === 0 && size < SETTLED_BELOW
    if (settled) break
    const before = quadraticForm(step.weight, state.residuals)
    const trial = theta.map((t, k) => t + (step.step[k] as number))
    const next = tryLinearise(view, trial, equations, draw)
    const after = next === null ? Number.POSITIVE_INFINITY : quadraticForm(step.weight, next.residuals)
    if (next !== null && after <= before * (1 + 1e-9) + 1e-12) {
      theta = trial
      state = next
      damping = damping < 1e-9 ? 0 : damping / 10
    } else {
      damping = Math.max(damping * 10, 1e-6)
      if (damping > 1e10) break
    }
  }
  const adjustment = adjust(state.jacobian, state.residuals, state.variance, 0)
  const determined = isDetermined(mapping, scale, state.jacobian)
  if (n === p && !(settled && determined)) {
    // Contradictory sizes end where the mapping collapses, which looks like too few; the start tells them apart.
    if (isDetermined(mapping, scale, linearise(view, start, equations, draw).jacobian)) {
      throw new CalibrationError(
        `its references contradict one another: no ${mapping.kind} mapping gives all of them at once. Check their sizes and marks.`,
      )
    }
  }
  const worst = adjustment === null ? Infinity : worstRelativeUncertainty(mapping, scale, adjustment)
  if (adjustment === null || !determined || !(worst < 1)) {
    throw new CalibrationError(whatIsMissing(view, theta, state.jacobian))
  }
  if (!settled) {
    throw new CalibrationError(
      `its references do not settle on one ${mapping.kind} mapping. Check their sizes and marks, or choose a simpler mapping.`,
    )
  }
  if (worst > WORST_RELATIVE_UNCERTAINTY) {
    throw new CalibrationError(
      `its references leave a scale or tilt uncertain by ${(100 * worst).toFixed(0)} %: they are too short, too close to one another or too roughly picked. Add a longer reference, or choose a simpler mapping.`,
    )
  }
  return {
    theta: propagateParameters(theta, adjustment, state),
    residuals: state.residuals,
    computed: state.computed,
    chi2: quadraticForm(adjustment.weight, state.residuals),
    dof: n - p,
    adjustment,
    jacobian: state.jacobian,
    variance: state.variance,
  }
}

/**
 * One scale for all: the middle one of stated size over size in pixels, so that a single slip does not move it.
 * @throws CalibrationError naming a reference that has no size on the sheet or none stated
 */
export function startingScale(view: ViewMapping, sizes: readonly StatedSize[], draw?: Draw): number {
  const inPixels = { ...view, draughting: 0 }
  const ratios: number[] = []
  for (const { reference, part, equations } of sizes) {
    for (const { features, measure, stated } of equations) {
      const pixels = measuredOn(reference, () =>
        observe(inPixels, view.mapping.start(1), features, measure, draw),
      )
      if (part === 'squareness') continue
      if (!(stated.value > 0 && Number.isFinite(stated.value))) {
        throw new CalibrationError(
          `reference ${reference} is stated to be ${stated.value} mm. State its true size, or remove it.`,
        )
      }
      ratios.push(stated.value / pixels.value)
    }
  }
  ratios.sort((a, b) => a - b)
  return ratios[Math.floor(ratios.length / 2)] ?? 1
}

function measuredOn(reference: string, take: () => Observation): Observation {
  try {
    return take()
  } catch (error) {
    if (!(error instanceof GeometryError)) throw error
    throw new CalibrationError(
      `reference ${reference} has no size on the sheet: ${error.message} Pick its marks again, or remove it.`,
    )
  }
}

interface Linearised {
  jacobian: Matrix
  residuals: number[]
  computed: number[]
  variance: Matrix
  sources: Source[]
  /** n × sources.length: what each source contributes to observed − computed. */
  errors: Float64Array[]
}

function tryLinearise(view: ViewMapping, theta: number[], equations: readonly Equation[], draw?: Draw) {
  try {
    const state = linearise(view, theta, equations, draw)
    return state.residuals.every(Number.isFinite) ? state : null
  } catch (error) {
    if (error instanceof GeometryError) return null
    throw error
  }
}

function linearise(
  view: ViewMapping,
  theta: ArrayLike<number>,
  equations: readonly Equation[],
  draw?: Draw,
): Linearised {
  const observations = equations.map((e) => observe(view, theta, e.features, e.measure, draw))
  const stated = equations.map((e) => (draw ? realise(e.stated, draw) : e.stated.value))
  const sources = collectSources(equations, observations)
  const index = new Map(sources.map((s, i) => [s, i]))
  const errors = equations.map((equation, row) => {
    const out = new Float64Array(sources.length)
    const put = (source: Source, c: number): void => {
      const i = index.get(source) as number
      out[i] = (out[i] as number) + c
    }
    equation.stated.sources.forEach((s, i) => {
      put(s, equation.stated.coefficients[i] as number)
    })
    const { sources: own, contributions } = observations[row] as (typeof observations)[number]
    own.forEach((s, i) => {
      put(s, -(contributions[i] as number))
    })
    return out
  })
  const computed = observations.map((o) => o.value)
  return {
    jacobian: new Matrix(observations.map((o) => [...o.byParameter])),
    residuals: computed.map((c, i) => (stated[i] as number) - c),
    computed,
    variance: covarianceOf(errors, stated),
    sources,
    errors,
  }
}

function collectSources(
  equations: readonly Equation[],
  observations: readonly { sources: readonly Source[] }[],
): Source[] {
  const all = new Set<Source>()
  equations.forEach((equation, i) => {
    for (const s of equation.stated.sources) all.add(s)
    for (const s of observations[i]?.sources ?? []) all.add(s)
  })
  return [...all].sort((a, b) => a.order - b.order)
}

function covarianceOf(errors: readonly Float64Array[], stated: readonly number[]): Matrix {
  const n = errors.length
  const size = Math.max(...stated.map(Math.abs))
  const out = Matrix.zeros(n, n)
  for (let i = 0; i < n; i++) {
    for (let j = i; j < n; j++) {
      const [a, b] = [errors[i] as Float64Array, errors[j] as Float64Array]
      let sum = 0
      for (let k = 0; k < a.length; k++) sum += (a[k] as number) * (b[k] as number)
      // A reference without any error would have infinite weight; one part in 10⁹ keeps the weights finite.
      if (i === j) sum += (1e-9 * size) ** 2
      out.set(i, j, sum)
      out.set(j, i, sum)
    }
  }
  return out
}

const isDetermined = (mapping: Mapping, scale: number, jacobian: Matrix): boolean =>
  spreadOfDirections(mapping, scale, jacobian) > SMALLEST_SPREAD

const worstRelativeUncertainty = (mapping: Mapping, scale: number, { covariance }: Adjustment): number =>
  Math.max(
    ...mapping.parameters.map((_, k) => Math.sqrt(covariance.get(k, k)) / parameterSize(mapping, k, scale)),
  )

function propagateParameters(theta: number[], { gain }: Adjustment, state: Linearised): Uncertain[] {
  // All parameters share one list of sources, which makes combining them quick.
  const sources: readonly Source[] = state.sources
  return theta.map((value, k) => {
    const coefficients = sources.map(() => 0)
    state.errors.forEach((error, row) => {
      const g = gain.get(k, row)
      for (let i = 0; i < coefficients.length; i++) {
        coefficients[i] = (coefficients[i] as number) + g * (error[i] as number)
      }
    })
    return { value, sources, coefficients }
  })
}
