import type { Calibration } from '../../calibration/calibrate.ts'
import type { Measure } from '../../job/model/types.ts'
import type { Feature } from '../../measuring/features/feature-of-mark.ts'
import type { Arithmetic } from '../../uncertainty/arithmetic.ts'

/** Which value is meant: the one that is adopted, or the one that it is compared by (see `EvaluatedEvidence`). */
export type Which = 'adopted' | 'compared'

/** What evidence is worked out with: by first order, or under one draw of all sources. */
export interface Valuation<N> {
  arithmetic: Arithmetic<N>
  /** mm, mm² or radians; throws GeometryError where there is nothing to measure. */
  measure(calibration: Calibration, measure: Measure, features: readonly Feature[]): N
  /** Value of a dimension that has one. */
  dimension(name: string, which: Which): N
}

/** How the value of a piece of evidence is worked out, whatever it is worked out with. */
export type WorkOut = <N>(which: Which, within: Valuation<N>) => N
