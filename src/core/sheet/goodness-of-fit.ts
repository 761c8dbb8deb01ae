import { chiSquareExceeds } from '../uncertainty/distributions.ts'
import type { Solution } from './solve-mapping.ts'

const MISFIT_BELOW = 0.05

/** Probability of a chi-square at least as large; null when nothing is redundant. */
export const probability = ({ chi2, dof }: Solution): number | null =>
  dof > 0 ? chiSquareExceeds(chi2, dof) : null

/** Whether references agree within their uncertainties. */
export const fits = (solution: Solution): boolean => (probability(solution) ?? 1) >= MISFIT_BELOW
