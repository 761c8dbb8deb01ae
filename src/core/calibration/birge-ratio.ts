import { worstRelative } from '../mapping/parameter.ts'
import type { ViewMapping } from '../mapping/view-mapping.ts'
import { correlatedNumbers } from '../uncertainty/correlated.ts'
import { standardUncertainty } from '../uncertainty/covariance.ts'
import { propagate, type Uncertain } from '../uncertainty/uncertain.ts'
import { reason } from '../words/core-words.ts'
import { CalibrationError } from './calibration-error.ts'
import { type Solution, WORST_RELATIVE_UNCERTAINTY } from './solve-mapping.ts'

/**
 * What enlarges the covariance of the parameters to factor² times itself: sources of their own, so that
 * what the parameters share with the marks is left as it is; worth the redundancy they were estimated from.
 */
export function excessOf(solution: Solution, factor: number, label: string): Uncertain[] {
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

/** The parameters with the excess added. */
export function widen(theta: readonly Uncertain[], excess: readonly Uncertain[]): Uncertain[] {
  const widened = theta.map((t, k) => propagate(t.value, [t, excess[k] as Uncertain], [1, 1]))
  // The merged lists are alike; one and the same array makes combining them quick.
  const { sources } = widened[0] as Uncertain
  return widened.map((t) => ({ ...t, sources }))
}

/** Refuses a scale that contradictory references leave so uncertain that first-order propagation would mislead. */
export function mustStayFirstOrder(view: ViewMapping, theta: readonly Uncertain[]): void {
  const scale = Math.abs(theta[0]?.value ?? 1)
  const worst = worstRelative(view.mapping.parameters, scale, theta.map(standardUncertainty))
  if (worst <= WORST_RELATIVE_UNCERTAINTY) return
  throw new CalibrationError(reason('calibration.disagrees-too-much', { share: worst }))
}
