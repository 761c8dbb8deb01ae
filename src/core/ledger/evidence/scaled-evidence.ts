import type { Evidence } from '../../job/model/types.ts'
import { expand } from '../../uncertainty/coverage.ts'
import { reason } from '../../words/core-words.ts'
import { endsDiffer } from './ends-differ.ts'
import { type EvaluatedEvidence, without } from './evaluated-evidence.ts'
import type { EvaluationContext } from './evaluation-context.ts'
import { givesBack } from './gives-back.ts'
import { readAtEdges } from './read-at-edges.ts'
import { shareOfFigure } from './scale-from-figure.ts'
import type { WorkOut } from './valuation.ts'

/**
 * Measures on the sheet, through the calibration of the view.
 * @throws GeometryError where there is nothing to measure
 */
export function scaledEvidence(
  evidence: Extract<Evidence, { basis: 'scaled' }>,
  { viewOf, featureOf, markOf, within }: EvaluationContext,
): EvaluatedEvidence {
  const view = viewOf(evidence.view)
  if (view === undefined) return without(evidence, reason('evidence.no-such-view', { view: evidence.view }))
  const { calibration, problem } = view
  const named = { name: view.view.name, view: view.view.id }
  if (calibration === null)
    return without(evidence, reason('evidence.view-not-calibrated', { ...named, problem }))
  const features = evidence.marks.map(featureOf)
  const workOut: WorkOut = (_, { measure }) => measure(calibration, evidence.measure, features)
  const value = workOut('adopted', within)
  if (givesBack(calibration, evidence.measure, features, value)) {
    return without(evidence, reason('evidence.gives-back-a-reference', named))
  }
  const coverage = expand(value)
  const evaluated: EvaluatedEvidence = {
    evidence,
    adopted: value,
    compared: value,
    coverage,
    workOut,
    written: '',
    usable: true,
    // A figure that is far off puts its view out of the company of the others: then it has its own sizes alone.
    shareOfFigure: (mm) =>
      Math.max(
        ...[calibration, view.own ?? calibration].map((by) =>
          shareOfFigure(by, evidence.measure, features, mm),
        ),
      ),
  }
  const edges = readAtEdges(evidence.marks.flatMap((id) => markOf(id) ?? []))
  const ends = endsDiffer(evidence.measure, () => {
    const diameter = (feature: (typeof features)[number] | undefined) =>
      within.measure(calibration, 'diameter', feature === undefined ? [] : [feature])
    return [diameter(features[0]), diameter(features[1])]
  })
  const remarks = [edges, ends].filter((one) => one !== null)
  if (remarks.length > 0) evaluated.remarks = remarks
  // One scale all over changes no angle, whatever it is.
  const free = evidence.measure === 'angle' && view.view.mapping === 'uniform'
  const because = view.unchecked ?? view.unlikely
  if (because !== undefined && !free) evaluated.unchecked = { ...named, because }
  return evaluated
}
