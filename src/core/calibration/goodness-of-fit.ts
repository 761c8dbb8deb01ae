import { chiSquareWithEstimatesExceeds } from '../uncertainty/distributions.ts'
import type { Solution } from './solve-mapping.ts'

const MISFIT_BELOW = 0.05

/** Probability of a misfit at least as large by chance; null when nothing is redundant. */
export function probability({ chi2, dof, dofs }: Solution): number | null {
  return dof > 0 ? chiSquareWithEstimatesExceeds(chi2, dof, harmonicMean(dofs)) : null
}

/** The poorest known variances count most. */
const harmonicMean = (dofs: readonly number[]): number =>
  dofs.length / dofs.reduce((sum, dof) => sum + 1 / dof, 0)

/** Whether references agree within their uncertainties. */
export const fits = (solution: Solution): boolean => (probability(solution) ?? 1) >= MISFIT_BELOW
