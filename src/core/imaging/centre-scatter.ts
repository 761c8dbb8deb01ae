import { DISTURBED, type Judged } from './leave-out.ts'
import type { Inflation } from './residual-correlation.ts'
import type { Traced } from './trace-stroke.ts'

/** How many degrees of freedom the noise model is worth beside the scatter of the centres. */
const MODEL_DOF = 30

/**
 * Standard uncertainty of each centre, as if they were independent: from the noise of the pixels and from the scatter of
 * the centres about their curve, together; from the scatter alone when it says clearly more (paper and pen wobble).
 * Neighbours whose errors go together count as fewer (Newey & West 1987, Bartlett's weights).
 * @param residuals of the kept centres about the fitted curve, pixels, in order; freedoms: n less what was fitted
 */
export function centreSigma(
  traced: Traced,
  inflation: Inflation,
  residuals: readonly number[],
  freedoms: number,
): number {
  const { fit, judged } = traced
  const model = fit.variance * inflation.centre * meanUnit(traced)
  const more = leftOutFactor(judged)
  if (freedoms < 1) return Math.sqrt(more * model)
  const squares = residuals.reduce((s, r) => s + r * r, 0)
  const scatter = (squares / freedoms) * together(residuals, squares)
  const limit = 1 + 2.33 * Math.sqrt(2 / freedoms + 2 / MODEL_DOF)
  if (scatter > limit * model) return Math.sqrt(more * scatter)
  return Math.sqrt((more * (MODEL_DOF * model + freedoms * scatter)) / (MODEL_DOF + freedoms))
}

/** Mean variance of the kept centres for white noise of variance 1, pixels²; some must be kept. */
export function meanUnit({ centres, judged }: Traced): number {
  const units = centres.flatMap((c, k) => (c !== null && judged.kept[k] ? [c.unit] : []))
  return units.reduce((s, u) => s + u, 0) / units.length
}

/**
 * Pieces left out because something disturbs them are not without effect: which are, the readings themselves decide, and
 * what stays just within the limits is kept. The variance of an estimate that leaves readings out is therefore taken with
 * the number there were over the number kept (Huber 1981, Robust Statistics, for M-estimators). Pieces beyond the end
 * of the stroke, or left out beforehand, do not count.
 */
function leftOutFactor({ kept, because }: Judged): number {
  const stay = kept.filter(Boolean).length
  const disturbed = because.filter((b) => b !== undefined && DISTURBED.has(b)).length
  return stay > 0 ? Math.min((stay + disturbed) / stay, 2) : 1
}

/** 1 + 2Σ of the weighted correlations of neighbours, when the first is significant. */
function together(residuals: readonly number[], squares: number): number {
  const n = residuals.length
  const correlation = (lag: number) => {
    let sum = 0
    for (let i = lag; i < n; i++) sum += (residuals[i] as number) * (residuals[i - lag] as number)
    return squares > 0 ? sum / squares : 0
  }
  if (n < 8 || correlation(1) < 2 / Math.sqrt(n)) return 1
  const lags = Math.max(1, Math.min(12, Math.floor(n / 5)))
  let sum = 1
  for (let lag = 1; lag <= lags; lag++) sum += 2 * (1 - lag / (lags + 1)) * correlation(lag)
  return Math.max(1, sum)
}
