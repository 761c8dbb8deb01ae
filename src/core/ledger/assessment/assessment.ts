import { evaluationOrder } from '../../formula/evaluation-order.ts'
import { parseFormula } from '../../formula/formula.ts'
import { FormulaError } from '../../formula/formula-error.ts'
import { GeometryError } from '../../geometry/geometry-error.ts'
import { type Labels, labelsOfJob } from '../../job/ids/labels-of-job.ts'
import type { Dimension, Job, Unit } from '../../job/model/types.ts'
import type { Feature } from '../../measuring/features/feature-of-mark.ts'
import { featureOf as makeFeature } from '../../measuring/features/feature-of-mark.ts'
import { measureFeatures } from '../../measuring/measure-features.ts'
import { FIRST_ORDER } from '../../uncertainty/first-order.ts'
import type { Uncertain } from '../../uncertainty/uncertain.ts'
import { reason } from '../../words/core-words.ts'
import { type Decision, decide } from '../adoption/adopt.ts'
import { evaluateEvidence } from '../evidence/evaluate-evidence.ts'
import type { EvaluatedEvidence } from '../evidence/evaluated-evidence.ts'
import type { EvaluationContext } from '../evidence/evaluation-context.ts'
import { readFigures } from '../evidence/figures.ts'
import type { InstrumentSources } from '../evidence/found-evidence.ts'
import { foundScatter } from '../evidence/found-scatter.ts'
import type { Which } from '../evidence/valuation.ts'
import { type CalibratedView, calibrateView } from '../views/calibrate-view.ts'

/** A dimension with all its evidence evaluated and one value adopted. */
export interface Assessed {
  dimension: Dimension
  evaluated: EvaluatedEvidence[]
  decision: Decision
  /** Disputed dimensions that the adopted value is worked out from. */
  restsOn: readonly string[]
}

/** A whole job, evaluated. All uncertain numbers in it share their sources. */
export interface Assessment {
  job: Job
  /** The unit that lengths are looked at in. A bare number in a figure means the job's own whatever this is. */
  unit: Unit
  /** What people call what is in it, by its ids. */
  labels: Labels
  views: Map<string, CalibratedView>
  dimensions: Map<string, Assessed>
  /** The finest fraction of an inch that its figures use: 16 for sixteenths; null when they use none. */
  finest: number | null
  /** Throws GeometryError when the mark determines no feature. */
  featureOf(id: string): Feature
  /** The features that were asked for. */
  features: ReadonlyMap<string, Feature>
}

/**
 * Evaluates every view and every dimension of a job.
 * @param unit that its lengths are looked at in; the job's own unless said otherwise
 * @throws FormulaError when formulas run in a circle; a job that `readJob` accepted never does
 */
export function assess(job: Job, unit: Unit = job.unit): Assessment {
  const features = new Map<string, Feature>()
  const featureOf = featuresOf(job, features)
  const views = new Map(job.views.map((view) => [view.id, calibrateView(job, view, featureOf)]))
  const instruments: InstrumentSources = new Map()
  const dimensions = new Map<string, Assessed>()
  const order = evaluationOrder(job.dimensions)
  if ('circle' in order) throw new FormulaError(reason('formula.circle', { names: order.circle }))
  const decided = (name: string, which: Which): Uncertain | null =>
    dimensions.get(name)?.decision[which] ?? null
  const figures = readFigures(job)
  const context: EvaluationContext = {
    figures,
    job,
    unit,
    views,
    featureOf,
    instruments,
    hasValue: (name) => decided(name, 'adopted') !== null,
    within: {
      arithmetic: FIRST_ORDER,
      measure: measureFeatures,
      dimension(name, which) {
        const value = decided(name, which)
        if (value === null) throw new RangeError(`Dimension ${name} has no value.`)
        return value
      },
    },
  }
  for (const dimension of order.order) {
    const scatter = foundScatter(dimension, job)
    const evaluated = dimension.evidence.map((e) => evaluateEvidence(e, dimension, scatter, context))
    const decision = decide(dimension, evaluated)
    dimensions.set(dimension.name, {
      dimension,
      evaluated,
      decision,
      restsOn: disputedBasis(decision, dimensions),
    })
  }
  const labels = labelsOfJob(job)
  return { job, unit, labels, views, dimensions, finest: figures.finest, featureOf, features }
}

/** The disputed dimensions among those that an adopted formula uses, and those that they rest on in turn. */
function disputedBasis(decision: Decision, dimensions: ReadonlyMap<string, Assessed>): readonly string[] {
  const names = new Set<string>()
  for (const { evidence } of decision.from) {
    if (evidence.basis !== 'derived') continue
    for (const name of parseFormula(evidence.formula).names) {
      const used = dimensions.get(name)
      if (used?.decision.status === 'disputed') names.add(name)
      for (const below of used?.restsOn ?? []) names.add(below)
    }
  }
  return [...names]
}

/** Features are made once and shared: that is how two measures of one mark come to share its errors. */
function featuresOf(job: Job, made: Map<string, Feature>): (id: string) => Feature {
  const marks = new Map(job.marks.map((m) => [m.id, m]))
  return (id) => {
    const known = made.get(id)
    if (known !== undefined) return known
    const mark = marks.get(id)
    if (mark === undefined) throw new GeometryError(reason('feature.no-such-mark', { mark: id }))
    const feature = makeFeature(mark)
    made.set(id, feature)
    return feature
  }
}
