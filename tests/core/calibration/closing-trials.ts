import { calibrate } from '../../../src/core/calibration/calibrate.ts'
import { CalibrationError } from '../../../src/core/calibration/calibration-error.ts'
import type { MappingKind } from '../../../src/core/job/model/types.ts'
import type { Feature } from '../../../src/core/measuring/features/feature-of-mark.ts'
import { measureFeatures } from '../../../src/core/measuring/measure-features.ts'
import { expand } from '../../../src/core/uncertainty/coverage.ts'
import type { RandomStream } from '../../../src/core/uncertainty/random.ts'
import { type ClosingCase, closingSheet, TRUE_DISTANCES } from './closing-cases.ts'

/** What came of some sheets whose figured sizes close on themselves. */
export interface ClosingTrials {
  sheets: number
  refused: number
  /** p < 0.05 */
  misfit: number
  /** Whose degrees of freedom are not those of the independent equations. */
  wrongDof: number
  /** Whose figures are said not to close. */
  open: number
  /** Of twice as many dimensions, one along and one across each sheet. */
  held: number
}

export function closingTrials(
  name: ClosingCase,
  kind: MappingKind,
  draughting: number,
  sheets: number,
  random: RandomStream,
): ClosingTrials {
  const trials: ClosingTrials = { sheets, refused: 0, misfit: 0, wrongDof: 0, open: 0, held: 0 }
  for (let i = 0; i < sheets; i++) {
    const sheet = closingSheet(name, kind, draughting, random)
    try {
      const calibration = calibrate(sheet.view, sheet.sizes)
      const equations = sheet.sizes.reduce((sum, { equations }) => sum + equations.length, 0)
      const dof = equations - sheet.closings - sheet.view.mapping.parameters.length
      // One in thousands is set aside by chance, and then there is less to check.
      const all = calibration.used.length === sheet.sizes.length
      if (all && calibration.dof !== dof) trials.wrongDof++
      if (calibration.p !== null && calibration.p < 0.05) trials.misfit++
      if (calibration.closures.length !== sheet.closings || calibration.closures.some((c) => !c.closes)) {
        trials.open++
      }
      const holds = (features: [Feature, Feature], truth: number): boolean => {
        const x = measureFeatures(calibration, 'distance', features)
        return Math.abs(x.value - truth) <= expand(x).U
      }
      if (holds(sheet.along, TRUE_DISTANCES.along)) trials.held++
      if (holds(sheet.across, TRUE_DISTANCES.across)) trials.held++
    } catch (error) {
      if (!(error instanceof CalibrationError)) throw error
      trials.refused++
    }
  }
  return trials
}
