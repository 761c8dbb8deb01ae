import { CholeskyDecomposition, Matrix } from 'ml-matrix'
import { covariance } from './covariance.ts'
import { chiSquareExceeds } from './distributions.ts'
import { propagate, type Uncertain } from './uncertain.ts'

/** Equations between observations and parameters, at one place of both: f = 0 where they hold. */
export interface Equations {
  /** f, one for each equation. */
  misclosure: readonly number[]
  /** Derivative of each by each observation: rows of B. */
  byObservation: readonly (readonly number[])[]
  /** Derivative of each by each parameter: rows of A, empty where there are no parameters. */
  byParameter: readonly (readonly number[])[]
}

/** Observations brought to agreement. All numbers lie over the sources of the observations. */
export interface AdjustedObservations {
  /** One for each observation. */
  adjusted: Uncertain[]
  parameters: Uncertain[]
  /** Observed less adjusted. */
  residuals: number[]
  /** Normalised residuals w (Baarda): observed too large where positive; 0 where nothing checks the observation. */
  normalised: number[]
  chi2: number
  /** Equations less parameters. */
  dof: number
  /** Probability that chance alone gives a chi-square as large; null when nothing is redundant. */
  p: number | null
}

/** Adjustment refused: why, for the program; what to tell a person depends on what the equations are. */
export type Unadjusted = 'dependent' | 'undetermined' | 'unsettled'

const MAX_STEPS = 50
/** Change of an adjusted observation as a share of its standard uncertainty at which a solution is reached. */
const SETTLED_BELOW = 1e-9
/** A pivot below this, of a matrix with a unit diagonal, is rounding. */
const NOTHING_LEFT = 1e-12
/** A share of redundancy below this leaves nothing to check an observation by. */
const UNCHECKED_BELOW = 1e-9

/**
 * Generalised least squares of correlated observations under equations that they and unknown parameters fulfil: of
 * all values that satisfy them, those with the least vᵀV⁻¹v. Equations of observations alone are conditions
 * (B·v + w = 0); one for each observation that gives it by the parameters is the parametric case. Exact observations
 * may be among them: they stay as they are. Linearised anew until it settles.
 * @param equations at values of the observations and the parameters, in the order given
 * @param start first values of the parameters
 * @returns `dependent` when an equation follows from the others or has nothing uncertain in it, `undetermined` when
 *   the equations leave a parameter free, `unsettled` when the linearisation does not come to rest
 * Source: the Gauss–Helmert model, Helmert 1872; v = −VBᵀk, k = R·w with M = BVBᵀ and
 *   R = M⁻¹ − M⁻¹A(AᵀM⁻¹A)⁻¹AᵀM⁻¹; normalised residual (Bᵀk)ᵢ/√(BᵀRB)ᵢᵢ, Baarda 1968.
 */
export function adjustObservations(
  observations: readonly Uncertain[],
  equations: (values: readonly number[], parameters: readonly number[]) => Equations,
  start: readonly number[] = [],
): AdjustedObservations | Unadjusted {
  const observed = observations.map((x) => x.value)
  const v = new Matrix(observations.map((a) => observations.map((b) => covariance(a, b))))
  const sd = v.diagonal().map(Math.sqrt)
  let values = observed
  let parameters: readonly number[] = start
  for (let i = 0; i < MAX_STEPS; i++) {
    const at = equations(values, parameters)
    const b = new Matrix(at.byObservation.map((row) => [...row]))
    // Misclosure of the observed values, by the equations as they run at the adjusted ones.
    const back = b.mmul(Matrix.columnVector(observed.map((x, k) => x - (values[k] ?? x)))).to1DArray()
    const w = Matrix.columnVector(at.misclosure.map((f, k) => f + (back[k] ?? 0)))
    const solver = solverOf(b, at.byParameter, v, start.length)
    if (typeof solver === 'string') return solver
    const correction = solver.gain.mmul(w).to1DArray()
    const step = solver.parameterGain?.mmul(w).to1DArray() ?? []
    const next = observed.map((x, k) => x - (correction[k] ?? 0))
    const moved = Math.max(
      0,
      ...next.map((x, k) => Math.abs(x - (values[k] ?? x)) / (sd[k] || 1)),
      ...step.map((s, k) => Math.abs(s) / (solver.parameterSd[k] || 1)),
    )
    values = next
    parameters = parameters.map((p, k) => p - (step[k] ?? 0))
    if (moved < SETTLED_BELOW) return result(observations, values, parameters, b, w, solver)
  }
  return 'unsettled'
}

interface Solver {
  /** R: k = R·w. */
  reduced: Matrix
  /** VBᵀR, n × equations. */
  gain: Matrix
  /** (AᵀM⁻¹A)⁻¹AᵀM⁻¹, parameters × equations; null without parameters. */
  parameterGain: Matrix | null
  parameterSd: number[]
}

function solverOf(
  b: Matrix,
  byParameter: readonly (readonly number[])[],
  v: Matrix,
  parameters: number,
): Solver | Unadjusted {
  const vb = v.mmul(b.transpose())
  const m = inverse(b.mmul(vb))
  if (m === null) return 'dependent'
  if (parameters === 0) return { reduced: m, gain: vb.mmul(m), parameterGain: null, parameterSd: [] }
  const a = new Matrix(byParameter.map((row) => [...row]))
  const am = a.transpose().mmul(m)
  const cofactor = inverse(am.mmul(a))
  if (cofactor === null) return 'undetermined'
  const parameterGain = cofactor.mmul(am)
  const reduced = m.clone().sub(am.transpose().mmul(parameterGain))
  return { reduced, gain: vb.mmul(reduced), parameterGain, parameterSd: cofactor.diagonal().map(Math.sqrt) }
}

/** Inverse of a symmetric matrix, scaled to a unit diagonal first; null where it has none to working precision. */
function inverse(matrix: Matrix): Matrix | null {
  const size = matrix.diagonal().map(Math.sqrt)
  if (size.some((s) => !(s > 0 && Number.isFinite(s)))) return null
  const scaled = Matrix.zeros(matrix.rows, matrix.rows)
  for (const [i, si] of size.entries()) {
    for (const [j, sj] of size.entries()) {
      // Both halves from one number: the factorisation insists on symmetry to the last bit.
      scaled.set(i, j, matrix.get(Math.min(i, j), Math.max(i, j)) / (si * sj))
    }
  }
  const cholesky = new CholeskyDecomposition(scaled)
  if (!cholesky.isPositiveDefinite()) return null
  if (Math.min(...cholesky.lowerTriangularMatrix.diagonal()) ** 2 < NOTHING_LEFT) return null
  const solved = cholesky.solve(Matrix.eye(matrix.rows))
  for (const [i, si] of size.entries()) {
    for (const [j, sj] of size.entries()) solved.set(i, j, solved.get(i, j) / (si * sj))
  }
  return solved
}

function result(
  observations: readonly Uncertain[],
  values: readonly number[],
  parameters: readonly number[],
  b: Matrix,
  w: Matrix,
  { reduced, gain, parameterGain }: Solver,
): AdjustedObservations {
  const correlates = reduced.mmul(w)
  const pull = b.transpose().mmul(correlates).to1DArray()
  const precision = b.transpose().mmul(reduced).mmul(b).diagonal()
  const errors = gain.mmul(b)
  const parameterErrors = parameterGain?.mmul(b)
  const chi2 = w.transpose().mmul(correlates).get(0, 0)
  const dof = w.rows - parameters.length
  return {
    adjusted: observations.map((_, i) =>
      propagate(
        values[i] ?? Number.NaN,
        observations,
        errors.getRow(i).map((e, j) => (i === j ? 1 - e : -e)),
      ),
    ),
    parameters: parameters.map((value, k) =>
      propagate(value, observations, parameterErrors?.getRow(k).map((e) => -e) ?? []),
    ),
    residuals: observations.map((x, i) => x.value - (values[i] ?? x.value)),
    normalised: observations.map((x, i) => {
      const q = precision[i] ?? 0
      return q * covariance(x, x) > UNCHECKED_BELOW ? (pull[i] ?? 0) / Math.sqrt(q) : 0
    }),
    chi2,
    dof,
    p: dof > 0 ? chiSquareExceeds(chi2, dof) : null,
  }
}
