import { degrees, toRadians } from '../geometry/angle-units.ts'
import { GeometryError } from '../geometry/geometry-error.ts'
import type { Measure } from '../job/model/types.ts'
import type { ViewMapping } from '../mapping/view-mapping.ts'
import { standardUncertainty } from '../uncertainty/covariance.ts'
import type { Draw } from '../uncertainty/draws.ts'
import { fromTerms, propagate, type Uncertain } from '../uncertainty/uncertain.ts'
import { reason } from '../words/core-words.ts'
import type { Feature } from './features/feature-of-mark.ts'
import { MEASURES } from './measures/measures.ts'
import type { TrueMeasure } from './measures/true-measure.ts'
import { measureThrough, observe } from './propagate-measure.ts'

/** A mapping of a view with its parameters as they came out. */
export interface SolvedView {
  view: ViewMapping
  theta: readonly Uncertain[]
}

/**
 * Measures features through a calibrated view.
 * @returns mm, mm² or radians, over the sources of the picks, the draughting and the parameters
 * @throws GeometryError where there is nothing to measure
 */
export function measureFeatures(
  solved: SolvedView,
  measure: Measure,
  features: readonly Feature[],
): Uncertain {
  const measured = measuredBy(solved, MEASURES[measure], features)
  mustStayFirstOrder(measure, measured, features)
  return measured
}

/**
 * The same by any measure, in first order whatever it comes to.
 * @throws GeometryError where there is nothing to measure
 */
export function measuredBy(
  { view, theta }: SolvedView,
  measure: TrueMeasure,
  features: readonly Feature[],
): Uncertain {
  const values = theta.map((t) => t.value)
  const o = observe(view, values, features, measure)
  const own = fromTerms(0, o.sources, o.contributions)
  const weights = [...o.byParameter, 1]
  return propagate(o.value, [...theta, own], weights)
}

/** Beyond these a radius or an angle is so curved a function of its picks that first order misleads. */
const WORST_RADIUS = 0.25
const WORST_ANGLE = toRadians(degrees(20))

function mustStayFirstOrder(measure: Measure, measured: Uncertain, features: readonly Feature[]): void {
  const u = standardUncertainty(measured)
  // Most measures hold: their marks are named only where one does not.
  const marks = () => features.map((f) => f.mark)
  if (!Number.isFinite(measured.value) || !Number.isFinite(u)) {
    throw new GeometryError(reason('measure.beyond-all-bounds', { measure, marks: marks() }))
  }
  const isRound = measure === 'radius' || measure === 'diameter' || measure === 'slot-width'
  if (isRound && u > WORST_RADIUS * measured.value) {
    throw new GeometryError(reason('measure.arc-too-short', { measure, marks: marks() }))
  }
  if (measure === 'angle' && u > WORST_ANGLE) {
    throw new GeometryError(reason('measure.lines-too-short', { marks: marks() }))
  }
}

/** The same with other errors: theta as recalibrated for them, mm, mm² or radians. */
export function remeasure(
  view: ViewMapping,
  theta: readonly number[],
  measure: Measure,
  features: readonly Feature[],
  draw: Draw,
): number {
  return measureThrough(view, theta, features, MEASURES[measure], draw)
}
