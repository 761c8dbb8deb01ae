import type { Calibration } from '../../calibration/calibrate.ts'
import type { Measure } from '../../job/model/types.ts'
import { element } from '../../linear-algebra/element.ts'
import type { Feature } from '../../measuring/features/feature-of-mark.ts'
import { measureFeatures } from '../../measuring/measure-features.ts'
import { standardUncertainty } from '../../uncertainty/covariance.ts'
import { exact, type Uncertain } from '../../uncertainty/uncertain.ts'

/** A value that is moved by so small a share of what its own picks are off by was not measured by them. */
const NOT_MOVED = 0.02

/** Of each calibration once, for thousands are measured through one. */
const KNOWN = new WeakMap<Calibration, ReadonlySet<Feature>>()

/** The features that the figured sizes of a view are stated for. */
function knownFeatures(calibration: Calibration): ReadonlySet<Feature> {
  const before = KNOWN.get(calibration)
  if (before !== undefined) return before
  const known = new Set(calibration.used.flatMap(({ equations }) => equations.flatMap((e) => e.features)))
  KNOWN.set(calibration, known)
  return known
}

/**
 * Whether a measure only gives back the figures that scale its view: taken from their own marks, it comes to the same
 * wherever these were picked, and says no more than the figures do.
 */
export function givesBack(
  calibration: Calibration,
  measure: Measure,
  features: readonly Feature[],
  value: Uncertain,
): boolean {
  const known = knownFeatures(calibration)
  if (!features.every((feature) => known.has(feature))) return false
  const theta = calibration.theta.map((t) => exact(t.value))
  const own = measureFeatures({ view: calibration.view, theta }, measure, features)
  const ownSources = new Set(own.sources)
  const left = value.sources.map((source, i) => (ownSources.has(source) ? element(value.coefficients, i) : 0))
  return Math.hypot(...left) <= NOT_MOVED * standardUncertainty(own)
}
