import { meanUnit, type PieceCentre } from '../fit/piece-centres.ts'
import type { StripFit } from '../fit/strip-fit.ts'
import { isDisturbed, type PieceSelection } from '../outliers/outlier-rejection.ts'
import { hacVariance } from './hac-variance.ts'
import type { Inflation } from './residual-correlation.ts'

/** The centres of the pieces of a stroke, and which of them are kept. */
export interface ScatteredCentres {
  fit: StripFit
  centres: readonly (PieceCentre | null)[]
  judged: PieceSelection
}

/** How many degrees of freedom the noise model is worth beside the scatter of the centres. */
const MODEL_DOF = 30

/**
 * Standard uncertainty of each centre, as if they were independent: from the noise of the pixels and from the scatter of
 * the centres about their curve, together; from the scatter alone when it says clearly more (paper and pen wobble).
 * @param residuals of the kept centres about the fitted curve, pixels, in order; freedoms: n less what was fitted
 */
export function centreSigma(
  scattered: ScatteredCentres,
  inflation: Inflation,
  residuals: readonly number[],
  freedoms: number,
): number {
  const { fit, centres, judged } = scattered
  const model = fit.variance * inflation.centre * meanUnit(centres, judged.kept)
  const more = leftOutFactor(judged)
  if (freedoms < 1) return Math.sqrt(more * model)
  const scatter = hacVariance(residuals, freedoms)
  const limit = 1 + 2.33 * Math.sqrt(2 / freedoms + 2 / MODEL_DOF)
  if (scatter > limit * model) return Math.sqrt(more * scatter)
  return Math.sqrt((more * (MODEL_DOF * model + freedoms * scatter)) / (MODEL_DOF + freedoms))
}

/**
 * Pieces left out because something disturbs them are not without effect: which are, the readings themselves decide, and
 * what stays just within the limits is kept. The variance of an estimate that leaves readings out is therefore taken with
 * the number there were over the number kept (Huber 1981, Robust Statistics, for M-estimators). Pieces beyond the end
 * of the stroke, or left out beforehand, do not count.
 */
function leftOutFactor({ kept, because }: PieceSelection): number {
  const stay = kept.filter(Boolean).length
  const disturbed = because.filter(isDisturbed).length
  return stay > 0 ? Math.min((stay + disturbed) / stay, 2) : 1
}
