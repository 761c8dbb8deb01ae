import { chiSquareWithEstimatesExceeds } from '../uncertainty/distributions.ts'
import { closureFit } from './closure-fit.ts'
import type { StatedSize } from './reference.ts'
import type { Solution } from './solve-mapping.ts'

const MISFIT_BELOW = 0.05

/** Probability of a misfit at least as large by chance; null when nothing is redundant. */
export function probability({ chi2, dof, dofs }: Pick<Solution, 'chi2' | 'dof' | 'dofs'>): number | null {
  return dof > 0 ? chiSquareWithEstimatesExceeds(chi2, dof, harmonicMean(dofs)) : null
}

/** The poorest known variances count most. */
const harmonicMean = (dofs: readonly number[]): number =>
  dofs.length / dofs.reduce((sum, dof) => sum + 1 / dof, 0)

/** Whether references agree within their uncertainties. */
export const fits = (solution: Solution): boolean => (probability(solution) ?? 1) >= MISFIT_BELOW

/** The chi-square of a solution with that of what its figures miss by when they close. */
export function withClosings(
  sizes: readonly StatedSize[],
  solution: Solution,
): Pick<Solution, 'chi2' | 'dof' | 'dofs'> {
  const { closings, residuals, dofs } = solution
  return {
    chi2: solution.chi2 + closureFit(sizes, closings, residuals).chi2,
    dof: solution.dof + closings.length,
    dofs,
  }
}
