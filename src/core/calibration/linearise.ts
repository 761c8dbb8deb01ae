import { Matrix } from 'ml-matrix'
import { GeometryError } from '../geometry/geometry-error.ts'
import { addTo } from '../linear-algebra/add-to.ts'
import { element } from '../linear-algebra/element.ts'
import type { ViewMapping } from '../mapping/view-mapping.ts'
import { observe } from '../measuring/propagate-measure.ts'
import { type Draw, realise } from '../uncertainty/draws.ts'
import type { Source } from '../uncertainty/source.ts'
import { reason } from '../words/core-words.ts'
import type { Equation } from './reference.ts'

/** The equations of a calibration at one place of its parameters. */
export interface Linearised {
  /** n × p, derivative of the computed by the parameters. */
  jacobian: Matrix
  /** stated − computed, mm */
  residuals: number[]
  computed: number[]
  /** n × n covariance of the residuals, mm² */
  variance: Matrix
  /** Everything that makes the residuals uncertain, in order. */
  sources: Source[]
  /** n × sources.length: what each source contributes to each residual, mm. */
  errors: Float64Array[]
}

/** The same, or null where a measure has no value there. */
export function tryLinearise(
  view: ViewMapping,
  theta: readonly number[],
  equations: readonly Equation[],
  draw?: Draw,
) {
  try {
    const state = linearise(view, theta, equations, draw)
    return state.residuals.every(Number.isFinite) ? state : null
  } catch (error) {
    if (error instanceof GeometryError) return null
    throw error
  }
}

/**
 * Computes every equation at theta, with its derivatives and the covariance of its residual.
 * @throws GeometryError where a measure has no value
 */
export function linearise(
  view: ViewMapping,
  theta: readonly number[],
  equations: readonly Equation[],
  draw?: Draw,
): Linearised {
  const observations = equations.map(({ features, measure, ofParameters }) =>
    ofParameters === undefined
      ? observe(view, theta, features, measure, draw)
      : { ...ofParameters(view.mapping, theta), sources: [], contributions: [] },
  )
  const stated = equations.map((e) => (draw ? realise(e.stated, draw) : e.stated.value))
  const sources = collectSources(equations, observations)
  const column = new Map(sources.map((s, i) => [s, i]))
  const errors = equations.map((equation, row) => {
    const out = new Float64Array(sources.length)
    const put = (source: Source, c: number): void => {
      const i = column.get(source)
      if (i === undefined) throw new RangeError(`The source ${source.label} is not among those collected.`)
      addTo(out, i, c)
    }
    equation.stated.sources.forEach((s, i) => {
      put(s, element(equation.stated.coefficients, i))
    })
    const { sources: own, contributions } = element(observations, row)
    own.forEach((s, i) => {
      put(s, -element(contributions, i))
    })
    return out
  })
  const computed = observations.map((o) => o.value)
  const jacobian = new Matrix(observations.map((o) => [...o.byParameter]))
  const variance = covarianceOf(errors, stated)
  // A variance can be beyond all numbers where no error is; the sum of all is where any is.
  if (!computed.every(Number.isFinite) || !Number.isFinite(variance.trace()) || !hasNumbersOnly(jacobian)) {
    throw new GeometryError(reason('calibration.beyond-all-bounds'))
  }
  return {
    jacobian,
    residuals: computed.map((c, i) => element(stated, i) - c),
    computed,
    variance,
    sources,
    errors,
  }
}

function hasNumbersOnly(matrix: Matrix): boolean {
  for (let i = 0; i < matrix.rows; i++) {
    for (let j = 0; j < matrix.columns; j++) if (!Number.isFinite(matrix.get(i, j))) return false
  }
  return true
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
  const size = Math.max(...stated.map(Math.abs))
  const out = Matrix.zeros(errors.length, errors.length)
  // A reference without any error would have infinite weight; one part in 10⁹ keeps the weights finite.
  const least = (1e-9 * size) ** 2
  errors.forEach((a, i) => {
    for (let j = 0; j <= i; j++) {
      const b = element(errors, j)
      let covariance = 0
      // In place, for this is the innermost loop of a recalibration, and a helper that sees other lists too is slower.
      for (let k = 0; k < a.length; k++) covariance += (a[k] ?? Number.NaN) * (b[k] ?? Number.NaN)
      if (i === j) covariance += least
      out.set(i, j, covariance)
      out.set(j, i, covariance)
    }
  })
  return out
}
