import { parseFormula } from '../../formula/formula.ts'
import type { Conventions } from '../../job/model/conventions.ts'
import type { Dimension, Unit } from '../../job/model/types.ts'
import { measureFeatures } from '../../measuring/measure-features.ts'
import { FIRST_ORDER } from '../../uncertainty/first-order.ts'
import type { Uncertain } from '../../uncertainty/uncertain.ts'
import { type Decision, decide } from '../adoption/adopt.ts'
import { curvedDecision } from '../adoption/curved-decision.ts'
import { evaluateEvidence } from '../evidence/evaluate-evidence.ts'
import type { UncheckedView } from '../evidence/evaluated-evidence.ts'
import type { EvaluationContext } from '../evidence/evaluation-context.ts'
import type { Which } from '../evidence/valuation.ts'
import type { Asking } from '../kept/consulted.ts'
import type { FiguresAs } from '../units/look.ts'
import type { Assessed } from './assessed.ts'
import { featureAsked } from './feature-asked.ts'
import type { SharedSources } from './shared-sources.ts'
import { type Singles, singleOf } from './singles.ts'
import type { Things } from './things.ts'

/** What all dimensions of a job are assessed with. */
export interface Setting {
  conventions: Conventions
  /** The unit that lengths are looked at in. */
  unit: Unit
  figuresAs: FiguresAs
  /** The finest fraction in common use in the job; null when there is none. */
  finest: number | null
  singles: Singles
  shared: SharedSources
}

/** Assesses the dimensions of a job, one after another. */
export class DimensionAssessor {
  readonly #singles: Singles
  /** What is the same for all dimensions is made once, for there are thousands. */
  readonly #context: Omit<EvaluationContext, 'figures'>
  #asking: Asking<Things> | null = null

  constructor(setting: Setting) {
    const { conventions, unit, figuresAs, finest, shared } = setting
    this.#singles = setting.singles
    const decided = (name: string, which: Which): Uncertain | null =>
      this.#get('dimension', name)?.decision[which] ?? null
    this.#context = {
      conventions,
      unit,
      figuresAs,
      finest,
      viewOf: (id) => this.#get('view', id),
      featureOf: (id) => featureAsked(this.#get('mark', id), id, shared),
      markOf: (id) => this.#get('mark', id),
      instrumentOf: (id) => this.#get('instrument', id),
      limitOf: (instrument) => shared.limitOf(instrument),
      scatterOf: (pool) => this.#get('scatter', pool),
      hasValue: (name) => decided(name, 'adopted') !== null,
      curved: (name) => {
        const assessed = this.#get('dimension', name)
        return assessed === undefined ? null : curvedDecision(assessed.decision)
      },
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

  #get<K extends keyof Things>(of: K, id: string): Things[K] {
    if (this.#asking === null) throw new RangeError(`Asked for ${of} ${id} while nothing is assessed.`)
    return this.#asking.get(of, id)
  }

  /** Evaluates the evidence of a dimension and decides its value; those that its formulas use were assessed before. */
  assess(dimension: Dimension, asking: Asking<Things>): Assessed {
    this.#asking = asking
    const { figures } = singleOf(this.#singles, dimension)
    const {
      conventions,
      unit,
      figuresAs,
      finest,
      viewOf,
      featureOf,
      markOf,
      instrumentOf,
      limitOf,
      scatterOf,
      hasValue,
      curved,
      within,
    } = this.#context
    // One literal, not a spread of parts: it is made for every dimension, and spreading is slow.
    const context: EvaluationContext = {
      conventions,
      unit,
      figuresAs,
      finest,
      figures,
      viewOf,
      featureOf,
      markOf,
      instrumentOf,
      limitOf,
      scatterOf,
      hasValue,
      curved,
      within,
    }
    const evaluated = dimension.evidence.map((e) => evaluateEvidence(e, dimension, context))
    const decision = decide(dimension, evaluated)
    return { dimension, evaluated, decision, ...basisOf(decision, asking) }
  }
}

const ON_NOTHING: Pick<Assessed, 'restsOn' | 'unchecked'> = { restsOn: [], unchecked: [] }

/** What an adopted value rests on that a person should know of, with what that rests on in turn. */
function basisOf(decision: Decision, asking: Asking<Things>): Pick<Assessed, 'restsOn' | 'unchecked'> {
  if (decision.from.every((one) => one.evidence.basis !== 'derived' && one.unchecked === undefined))
    return ON_NOTHING
  const names = new Set<string>()
  const views = new Map<string, UncheckedView>()
  const add = (one: UncheckedView): unknown => views.has(one.view) || views.set(one.view, one)
  for (const { evidence, unchecked } of decision.from) {
    if (unchecked !== undefined) add(unchecked)
    if (evidence.basis !== 'derived') continue
    for (const name of parseFormula(evidence.formula).names) {
      const used = asking.get('dimension', name)
      if (used?.decision.status === 'disputed') names.add(name)
      for (const below of used?.restsOn ?? []) names.add(below)
      for (const below of used?.unchecked ?? []) add(below)
    }
  }
  return { restsOn: [...names], unchecked: [...views.values()] }
}
