import type { Measure } from '../job/types.ts'
import type { Draw } from '../uncertainty/draws.ts'
import { fromTerms, propagate, type Uncertain } from '../uncertainty/uncertain.ts'
import type { Calibration } from './calibrate.ts'
import type { Feature } from './feature.ts'
import { MEASURES } from './measures.ts'
import { observe } from './observe.ts'

/**
 * Measures features through a calibration.
 * @returns mm, mm² or radians, over the sources of the picks, the draughting and the calibration
 * @throws GeometryError where there is nothing to measure
 */
export function measureFeatures(
  calibration: Calibration,
  measure: Measure,
  features: readonly Feature[],
): Uncertain {
  const theta = calibration.theta.map((t) => t.value)
  const o = observe(calibration.view, theta, features, MEASURES[measure])
  const own = fromTerms(0, o.sources, o.contributions)
  const weights = [...o.byParameter, 1]
  return propagate(o.value, [...calibration.theta, own], weights)
}

/** The same with other errors: theta as recalibrated for them, mm, mm² or radians. */
export function remeasure(
  calibration: Calibration,
  theta: readonly number[],
  measure: Measure,
  features: readonly Feature[],
  draw: Draw,
): number {
  return observe(calibration.view, theta, features, MEASURES[measure], draw).value
}
