import { ADOPTION_ORDER } from '../../job/model/adoption-order.ts'
import type { Basis, Dimension } from '../../job/model/types.ts'
import { element } from '../../linear-algebra/element.ts'
import type { Arithmetic } from '../../uncertainty/arithmetic.ts'
import { variance } from '../../uncertainty/covariance.ts'
import { FIRST_ORDER } from '../../uncertainty/first-order.ts'
import { normalisedError } from '../../uncertainty/normalised-error.ts'
import type { Uncertain } from '../../uncertainty/uncertain.ts'
import { type Weighting, weightedMean, weighting } from '../../uncertainty/weighted-mean.ts'
import { reason } from '../../words/core-words.ts'
import type { AnyReason } from '../../words/reason.ts'
import type { EvaluatedEvidence } from '../evidence/evaluated-evidence.ts'
import type { Which } from '../evidence/valuation.ts'
import { type Concordance, concordanceOf, DISPUTED_ABOVE, type Pair } from './agreement.ts'
import { witnessesAmong } from './witnesses.ts'

/** Which value a dimension takes, and how its evidence agrees. */
export interface Decision extends Concordance {
  adopted: Uncertain | null
  /** The same value as it is compared and as relations use it. */
  compared: Uncertain | null
  basis: Basis | 'mean' | null
  /** The evidence the value rests on. */
  from: readonly EvaluatedEvidence[]
  /** How it is a mean of the evidence; undefined where it is one piece's own value. */
  mean?: Weighting | undefined
  /** `adopt` of the dimension, when it was followed. */
  chosen?: string
  /** Why there is no value. */
  open?: AnyReason
  /** E_n of each pair of usable evidence. */
  pairs: Pair[]
}

/** Of formulas that come to the same, the first: rounding alone must not choose. */
const SURER = 1 - 1e-9

/** Decides which value a dimension takes. */
export function decide(dimension: Dimension, evaluated: readonly EvaluatedEvidence[]): Decision {
  const chosen = dimension.adopt
  // A doubtful figure counts once a person has chosen it.
  const counts = (w: EvaluatedEvidence): boolean =>
    w.usable || (w.compared !== null && w.evidence.id === chosen)
  const usable = evaluated.filter(counts)
  const pairs = comparePairs(usable)
  // A limit can dispute a value, and is none itself: keeping within it confirms no size.
  const values = usable.filter((w) => w.limit === undefined)
  const concordance = concordanceOf(values, pairs)
  if (chosen !== undefined) return adoptChosen(chosen, evaluated, values, pairs, concordance)
  for (const basis of ADOPTION_ORDER) {
    const value = adoptBasis(basis, values, pairs)
    if (value !== null) {
      const { adopted, compared, from, mean } = value
      return { ...concordance, adopted, compared, basis, from, mean, pairs }
    }
  }
  return { ...concordance, ...NOTHING, pairs, open: whyNothing(evaluated) }
}

const NOTHING = { adopted: null, compared: null, basis: null, status: 'open', from: [] } as const

type Value = Pick<Decision, 'adopted' | 'compared' | 'basis' | 'from' | 'mean'>

function adoptChosen(
  chosen: string,
  evaluated: readonly EvaluatedEvidence[],
  usable: readonly EvaluatedEvidence[],
  pairs: Decision['pairs'],
  concordance: Concordance,
): Decision {
  const value =
    chosen === 'mean'
      ? meanOf(usable, 'mean')
      : isBasis(chosen)
        ? adoptBasis(chosen, usable, pairs)
        : single(usable.find((w) => w.evidence.id === chosen))
  if (value !== null) return { ...concordance, ...value, pairs, chosen }
  const named = evaluated.find((w) => w.evidence.id === chosen)
  const open =
    named === undefined
      ? chosen === 'mean'
        ? reason('adoption.no-usable-mean')
        : reason('adoption.no-usable-basis', { basis: chosen })
      : reason('adoption.chosen-unusable', { id: chosen, problem: named.problem ?? null })
  return { ...concordance, ...NOTHING, pairs, chosen, open }
}

const isBasis = (word: string): word is Basis => (ADOPTION_ORDER as readonly string[]).includes(word)

function adoptBasis(
  basis: Basis,
  usable: readonly EvaluatedEvidence[],
  pairs: Decision['pairs'],
): Value | null {
  const all = usable.filter((w) => w.evidence.basis === basis)
  if (all.length === 0) return null
  switch (basis) {
    case 'printed':
      return single(mostAgreed(all, pairs))
    case 'derived':
      return single(all.reduce((best, w) => (varianceOf(w) < SURER * varianceOf(best) ? w : best)))
    default:
      return meanOf(all, basis)
  }
}

/** The figure that agrees with most of the rest; the first of them where several do. */
function mostAgreed(
  figures: readonly EvaluatedEvidence[],
  pairs: Decision['pairs'],
): EvaluatedEvidence | undefined {
  const disputes = (w: EvaluatedEvidence): number =>
    pairs.filter((p) => (p.a === w || p.b === w) && p.en > DISPUTED_ABOVE).length
  let best = figures[0]
  for (const w of figures) if (best !== undefined && disputes(w) < disputes(best)) best = w
  return best
}

const varianceOf = (w: EvaluatedEvidence): number =>
  w.compared === null ? Number.POSITIVE_INFINITY : variance(w.compared)

function single(w: EvaluatedEvidence | undefined): Value | null {
  return w === undefined || w.adopted === null
    ? null
    : { adopted: w.adopted, compared: w.compared, basis: w.evidence.basis, from: [w] }
}

function meanOf(all: readonly EvaluatedEvidence[], basis: Basis | 'mean'): Value | null {
  // What says again what another says would count twice.
  const from = witnessesAmong(all).witnesses
  const values = from.flatMap((w) => (w.compared === null ? [] : [w.compared]))
  if (values.length === 0) return null
  const mean = weighting(values)
  const value = weightedMean(mean, FIRST_ORDER, (i) => element(values, i))
  return { adopted: value, compared: value, basis, from, mean }
}

/** The weighted mean of what some evidence is compared by; null where none has a value. */
export const meanOfEvidence = (evidence: readonly EvaluatedEvidence[]): Uncertain | null =>
  meanOf(evidence, 'mean')?.compared ?? null

/**
 * What a decision comes to with other values of its evidence. A mean is one of what the evidence is compared by.
 * @throws RangeError when nothing was adopted
 */
export function decidedValue<N>(
  { from, mean }: Decision,
  which: Which,
  arithmetic: Arithmetic<N>,
  of: (evidence: EvaluatedEvidence, which: Which) => N,
): N {
  return mean === undefined
    ? of(element(from, 0), which)
    : weightedMean(mean, arithmetic, (i) => of(element(from, i), 'compared'))
}

/** Whether a value is on the side of a limit where it says nothing against it: E_n is one-sided there. */
function keepsWithin(value: EvaluatedEvidence, { limit, compared }: EvaluatedEvidence): boolean {
  if (limit === undefined || compared === null || value.compared === null) return false
  return limit === 'max' ? value.compared.value <= compared.value : value.compared.value >= compared.value
}

function comparePairs(usable: readonly EvaluatedEvidence[]): Decision['pairs'] {
  const pairs: Decision['pairs'] = []
  for (let i = 0; i < usable.length; i++) {
    for (let j = i + 1; j < usable.length; j++) {
      const [a, b] = [element(usable, i), element(usable, j)]
      if (a.compared === null || b.compared === null || a.coverage === null || b.coverage === null) continue
      if (a.limit !== undefined && b.limit !== undefined) continue
      const within = keepsWithin(a, b) || keepsWithin(b, a)
      pairs.push({ a, b, en: within ? 0 : normalisedError(a.compared, b.compared, a.coverage, b.coverage) })
    }
  }
  return pairs
}

function whyNothing(evaluated: readonly EvaluatedEvidence[]): AnyReason {
  if (evaluated.length === 0) return reason('adoption.nothing-yet')
  const [first] = evaluated
  if (evaluated.length === 1) return first?.problem ?? reason('adoption.without-value')
  const evidence = evaluated.map((w) => ({ id: w.evidence.id, problem: w.problem ?? null }))
  return reason('adoption.none-usable', { evidence })
}
