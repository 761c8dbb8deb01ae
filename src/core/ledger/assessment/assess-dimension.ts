import { parseFormula } from '../../formula/formula.ts'
import { GeometryError } from '../../geometry/geometry-error.ts'
import type { Dimension, Unit } from '../../job/model/types.ts'
import type { Feature } from '../../measuring/features/feature-of-mark.ts'
import { measureFeatures } from '../../measuring/measure-features.ts'
import { FIRST_ORDER } from '../../uncertainty/first-order.ts'
import type { Uncertain } from '../../uncertainty/uncertain.ts'
import { reason } from '../../words/core-words.ts'
import { type Decision, decide } from '../adoption/adopt.ts'
import { evaluateEvidence } from '../evidence/evaluate-evidence.ts'
import type { EvaluationContext } from '../evidence/evaluation-context.ts'
import { foundScatter } from '../evidence/found-scatter.ts'
import type { Which } from '../evidence/valuation.ts'
import type { Asking } from '../kept/consulted.ts'
import type { Assessed } from './assessed.ts'
import type { SharedSources } from './shared-sources.ts'
import type { Singles } from './singles.ts'
import type { Things } from './things.ts'

/** What all dimensions of a job are assessed with. */
export interface Setting {
  singles: Singles
  shared: SharedSources
  /** The unit that lengths are looked at in. */
  unit: Unit
  /** The finest fraction in common use in the job; null when there is none. */
  finest: number | null
}

/** Evaluates the evidence of a dimension and decides its value; those that its formulas use were assessed before. */
export function assessDimension(dimension: Dimension, setting: Setting, asking: Asking<Things>): Assessed {
  const context = contextOf(dimension, setting, asking)
  const evaluated = dimension.evidence.map((e) => evaluateEvidence(e, dimension, context))
  const decision = decide(dimension, evaluated)
  return { dimension, evaluated, decision, restsOn: disputedBasis(decision, asking) }
}

function contextOf(
  dimension: Dimension,
  { singles, shared, unit, finest }: Setting,
  asking: Asking<Things>,
): EvaluationContext {
  const { conventions } = singles
  const decided = (name: string, which: Which): Uncertain | null =>
    asking.get('dimension', name)?.decision[which] ?? null
  return {
    conventions,
    unit,
    figures: singles.figuresOf(dimension),
    finest,
    scatter: foundScatter(dimension, conventions),
    viewOf: (id) => asking.get('view', id),
    featureOf: (id) => featureAsked(id, shared, asking),
    instrumentOf: (id) => asking.get('instrument', id),
    limitOf: (instrument) => shared.limitOf(instrument),
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
}

/**
 * The feature of the mark that goes by an id.
 * @throws GeometryError when there is no such mark, or when it determines none
 */
export function featureAsked(id: string, shared: SharedSources, asking: Asking<Things>): Feature {
  const mark = asking.get('mark', id)
  if (mark === undefined) throw new GeometryError(reason('feature.no-such-mark', { mark: id }))
  return shared.featureOf(mark)
}

/** The disputed dimensions among those that an adopted formula uses, and those that they rest on in turn. */
function disputedBasis(decision: Decision, asking: Asking<Things>): readonly string[] {
  const names = new Set<string>()
  for (const { evidence } of decision.from) {
    if (evidence.basis !== 'derived') continue
    for (const name of parseFormula(evidence.formula).names) {
      const used = asking.get('dimension', name)
      if (used?.decision.status === 'disputed') names.add(name)
      for (const below of used?.restsOn ?? []) names.add(below)
    }
  }
  return [...names]
}
