import { element } from '../linear-algebra/element.ts'
import { normalEquivalent } from '../uncertainty/distributions.ts'
import type { StatedSize } from './reference.ts'
import { residualTest } from './residual-test.ts'
import type { Solution } from './solve-mapping.ts'

/** Two-sided 0.1 % bound of the normalised residual. Source: Baarda 1968. */
export const SUSPECT_ABOVE = 3.29

export const isSuspect = (w: number): boolean => Math.abs(w) > SUSPECT_ABOVE

/** Whether some stated size is checked by others. */
export const isChecked = ({ dof, closings }: Solution): boolean => dof > 0 || closings.length > 0

/** A share of redundancy below this leaves nothing to check a stated size by. */
const UNCHECKED_BELOW = 1e-6

/**
 * Normalised residual w of each stated size: the test of "this size alone is wrong" against "all fit".
 * A rectangle's width stands in two equations, so its hypothesis moves both.
 * Figures that close on themselves are tested by what they miss by as well, against their rounding.
 * w = cᵀWr / √(cᵀW Q_r W c), Q_r = V − J N⁻¹ Jᵀ; 0 where no other reference checks it. Where the variance is itself an
 * estimate (repeated picks), w is the normal deviate that is as improbable as this is in Student's t.
 * Source: Baarda, "A testing procedure for use in geodetic networks" (1968), conventional alternative hypotheses.
 */
export function normalisedResiduals(
  sizes: readonly StatedSize[],
  solution: Solution,
  { weight, weighted, cofactor, rows: ofSize } = residualTest(sizes, solution),
): number[] {
  return ofSize.map((rows) => {
    let numerator = 0
    let precision = 0
    let total = 0
    for (const i of rows) {
      numerator += element(weighted, i)
      for (const j of rows) {
        precision += cofactor.get(i, j)
        total += weight.get(i, j)
      }
    }
    if (!(precision > UNCHECKED_BELOW * total)) return 0
    const dof = Math.min(...rows.map((i) => element(solution.dofs, i)))
    return normalEquivalent(numerator / Math.sqrt(precision), dof)
  })
}
