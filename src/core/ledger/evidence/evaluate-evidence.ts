import { parseFormula } from '../../formula/formula.ts'
import { FormulaError } from '../../formula/formula-error.ts'
import { GeometryError } from '../../geometry/geometry-error.ts'
import type { Dimension, DimensionKind, Evidence, Job, Unit } from '../../job/model/types.ts'
import type { Feature } from '../../measuring/features/feature-of-mark.ts'
import { measureFeatures } from '../../measuring/measure-features.ts'
import { NotationError } from '../../quantity/notation/notation-error.ts'
import { standardUncertainty } from '../../uncertainty/covariance.ts'
import type { Uncertain } from '../../uncertainty/uncertain.ts'
import type { CalibratedView } from '../calibrate-view.ts'
import { type Weighed, without } from './evaluated-evidence.ts'
import type { Figures } from './figures.ts'
import { foundEvidence, type InstrumentSources } from './found-evidence.ts'
import type { FoundScatter } from './found-scatter.ts'
import { printedEvidence } from './printed-evidence.ts'

/** What evidence is weighed with. */
export interface WeighingContext {
  job: Job
  /** The unit that lengths are looked at in. */
  unit: Unit
  views: ReadonlyMap<string, CalibratedView>
  featureOf(id: string): Feature
  instruments: InstrumentSources
  figures: Figures
  /** Value of a dimension that was decided before; null when it has none. */
  adopted(name: string): Uncertain | null
  compared(name: string): Uncertain | null
}

/** No pick is so sure: below this share of the value only rounding is left. */
const NOTHING_MEASURED = 1e-10

/** Words with a full stop at their end. */
const sentence = (words: string): string => (/[.!?]\s*$/.test(words) ? words : `${words}.`)

/**
 * Reads one piece of evidence; what is wrong with it becomes its `problem`.
 * @param scatter of the dimension's readings, by instrument
 */
export function weighEvidence(
  evidence: Evidence,
  dimension: Dimension,
  scatter: ReadonlyMap<string | undefined, FoundScatter>,
  context: WeighingContext,
): Weighed {
  if (evidence.withdrawn !== undefined) return without(evidence, sentence(`Withdrawn: ${evidence.withdrawn}`))
  try {
    return weigh(evidence, dimension, scatter, context)
  } catch (error) {
    const about = [NotationError, GeometryError, FormulaError]
    if (about.some((kind) => error instanceof kind))
      return without(evidence, sentence((error as Error).message))
    throw error
  }
}

function weigh(
  evidence: Evidence,
  dimension: Dimension,
  scatter: ReadonlyMap<string | undefined, FoundScatter>,
  context: WeighingContext,
): Weighed {
  switch (evidence.basis) {
    case 'printed':
      return printedEvidence(evidence, dimension, context)
    case 'found':
      return foundEvidence(
        evidence,
        dimension.kind,
        context.job,
        context.instruments,
        scatter.get(evidence.instrument),
      )
    case 'scaled':
      return scaledEvidence(evidence, context)
    case 'derived':
      return derivedEvidence(evidence, dimension.kind, context)
  }
}

function scaledEvidence(
  evidence: Extract<Evidence, { basis: 'scaled' }>,
  { views, featureOf }: WeighingContext,
): Weighed {
  const view = views.get(evidence.view)
  if (view === undefined) return without(evidence, `There is no view ${evidence.view}.`)
  if (view.calibration === null) {
    return without(
      evidence,
      `View "${view.view.name}" (${view.view.id}) can't be calibrated: ${view.problem}`,
    )
  }
  const value = measureFeatures(view.calibration, evidence.measure, evidence.marks.map(featureOf))
  if (standardUncertainty(value) <= NOTHING_MEASURED * Math.abs(value.value)) {
    return without(
      evidence,
      `It gives back a size that the scale of view "${view.view.name}" (${view.view.id}) was taken from, so nothing is ` +
        'measured by it: measure another distance, or give the view one more known size.',
    )
  }
  return { evidence, adopted: value, compared: value, written: '', usable: true }
}

function derivedEvidence(
  evidence: Extract<Evidence, { basis: 'derived' }>,
  kind: DimensionKind,
  { adopted, compared }: WeighingContext,
): Weighed {
  const formula = parseFormula(evidence.formula)
  const missing = formula.names.filter((name) => adopted(name) === null)
  if (missing.length > 0) {
    return without(
      evidence,
      `It needs ${missing.join(' and ')}, which ${missing.length > 1 ? 'have' : 'has'} no value yet.`,
    )
  }
  const value = formula.value((name) => adopted(name) as Uncertain)
  const comparedValue = formula.value((name) => compared(name) as Uncertain)
  const problem = problemOf(evidence.formula, value, kind) ?? problemOf(evidence.formula, comparedValue, kind)
  if (problem !== null) return without(evidence, problem)
  return { evidence, adopted: value, compared: comparedValue, written: '', usable: true }
}

function problemOf(formula: string, x: Uncertain, kind: DimensionKind): string | null {
  if (!Number.isFinite(x.value)) return `The formula \`${formula}\` has no value for these dimensions.`
  if (x.value < 0 && kind !== 'angle') {
    return `The formula \`${formula}\` gives less than nothing: check the dimensions it uses.`
  }
  if (!Number.isFinite(standardUncertainty(x))) {
    return `The formula \`${formula}\` has no uncertainty at these dimensions: the least change of them leaves it without a value, or changes it without bound.`
  }
  return null
}
