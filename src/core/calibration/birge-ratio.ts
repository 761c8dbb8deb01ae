import { element } from '../linear-algebra/element.ts'
import { worstRelative } from '../mapping/parameter.ts'
import type { ViewMapping } from '../mapping/view-mapping.ts'
import { correlatedNumbers } from '../uncertainty/correlated.ts'
import { standardUncertainty } from '../uncertainty/covariance.ts'
import { newSource } from '../uncertainty/source.ts'
import { fromTerms, propagate, type Uncertain } from '../uncertainty/uncertain.ts'
import { reason } from '../words/core-words.ts'
import { CalibrationError } from './calibration-error.ts'
import { BENDS_PASS, type ClosureFit, closes, closureFit } from './closure-fit.ts'
import type { StatedSize } from './reference.ts'
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
    `misfit of the figured sizes of ${label}`,
    { dof: solution.dof },
  )
}

/**
 * What figures that do not close add to the parameters: each is off by as much as its rounding would have to be larger
 * for them to close; a source of its own for each.
 * @returns null where all close
 */
export function figureExcess(
  sizes: readonly StatedSize[],
  solution: Solution,
  label: string,
): Uncertain[] | null {
  const off = figuresOff(solution, closureFit(sizes, solution.closings, solution.residuals))
  let row = 0
  const effects = sizes.flatMap(({ equations }) => {
    const rows = equations.map(() => row++)
    const u = Math.max(...rows.map((i) => element(off, i)))
    if (u === 0) return []
    const { gain } = solution.adjustment
    return [solution.theta.map((_, k) => rows.reduce((sum, i) => sum + gain.get(k, i) * u, 0))]
  })
  if (effects.length === 0) return null
  const sources = effects.map(() => newSource(`figures of ${label} that do not add up`))
  return solution.theta.map((_, k) =>
    fromTerms(
      0,
      sources,
      effects.map((effect) => element(effect, k)),
    ),
  )
}

/** What each figure may be off by so that the closings come out as they do, standard, mm. */
function figuresOff({ closings, residuals }: Solution, fit: ClosureFit): number[] {
  const off = residuals.map(() => 0)
  closings.forEach(({ factors, curvature }, k) => {
    const missed = Math.abs(element(fit.misclosures, k))
    if (missed <= BENDS_PASS * curvature) return
    const roundings = element(fit.roundings, k)
    const parts = factors.map((f, j) => f * element(roundings, j))
    // A figure that is wrong, and not rounded, may be any.
    const byRounding = closes(fit, k) && Math.hypot(...parts) > 0
    factors.forEach((f, j) => {
      if (f === 0) return
      const share = byRounding ? element(roundings, j) / Math.hypot(...parts) : 1 / Math.hypot(...factors)
      off[j] = Math.max(element(off, j), missed * share)
    })
  })
  return off
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
