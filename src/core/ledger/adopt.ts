import type { Basis, Dimension } from '../job/model/types.ts'
import { variance } from '../uncertainty/covariance.ts'
import { expand } from '../uncertainty/coverage.ts'
import { normalisedError } from '../uncertainty/normalised-error.ts'
import type { Uncertain } from '../uncertainty/uncertain.ts'
import { weightedMean } from '../uncertainty/weighted-mean.ts'
import type { Weighed } from './evidence/evaluated-evidence.ts'
import type { Status } from './table/table.ts'

/** Which value a dimension takes, and how its evidence agrees. */
export interface Decision {
  adopted: Uncertain | null
  /** The same value as it is compared and as relations use it. */
  compared: Uncertain | null
  basis: Basis | 'mean' | null
  status: Status
  /** The evidence the value rests on. */
  from: readonly Weighed[]
  /** What a mean was widened by, because its evidence disagrees. */
  excess?: Uncertain | undefined
  /** `adopt` of the dimension, when it was followed. */
  chosen?: string
  /** Why there is no value. */
  open?: string
  /** E_n of each pair of usable evidence. */
  pairs: { a: Weighed; b: Weighed; en: number }[]
}

const DISPUTED_ABOVE = 1

/** Rules of adoption, in the order in which they are tried when none is chosen. */
const DEFAULT_ORDER: readonly Basis[] = ['printed', 'derived', 'scaled', 'found']

/** Decides which value a dimension takes. */
export function decide(dimension: Dimension, weighed: readonly Weighed[]): Decision {
  const chosen = dimension.adopt
  // A doubtful figure counts once a person has chosen it.
  const counts = (w: Weighed): boolean => w.usable || (w.compared !== null && w.evidence.id === chosen)
  const usable = weighed.filter(counts)
  const pairs = comparePairs(usable)
  const status: Status =
    usable.length === 0
      ? 'open'
      : usable.length === 1
        ? 'single'
        : pairs.some((p) => p.en > DISPUTED_ABOVE)
          ? 'disputed'
          : 'agreed'
  if (chosen !== undefined) return adoptChosen(chosen, weighed, usable, pairs, status)
  for (const basis of DEFAULT_ORDER) {
    const value = adoptBasis(basis, usable, pairs)
    if (value !== null) {
      const { adopted, compared, from, excess } = value
      return { adopted, compared, basis, status, from, excess, pairs }
    }
  }
  return { ...NOTHING, pairs, open: whyNothing(weighed) }
}

const NOTHING = { adopted: null, compared: null, basis: null, status: 'open', from: [] } as const

type Value = Pick<Decision, 'adopted' | 'compared' | 'basis' | 'from' | 'excess'>

function adoptChosen(
  chosen: string,
  weighed: readonly Weighed[],
  usable: readonly Weighed[],
  pairs: Decision['pairs'],
  status: Status,
): Decision {
  const value =
    chosen === 'mean'
      ? meanOf(usable, 'mean')
      : isBasis(chosen)
        ? adoptBasis(chosen, usable, pairs)
        : single(usable.find((w) => w.evidence.id === chosen))
  if (value !== null) return { ...value, status, pairs, chosen }
  const named = weighed.find((w) => w.evidence.id === chosen)
  const open =
    named === undefined
      ? `${chosen === 'mean' ? 'The mean' : `A ${chosen} value`} is to be adopted, but there is no usable evidence for it.`
      : `Evidence ${chosen} is to be adopted, but it can't be used: ${named.problem ?? 'it has no value.'}`
  return { ...NOTHING, pairs, chosen, open }
}

const isBasis = (word: string): word is Basis => (DEFAULT_ORDER as readonly string[]).includes(word)

function adoptBasis(basis: Basis, usable: readonly Weighed[], pairs: Decision['pairs']): Value | null {
  const all = usable.filter((w) => w.evidence.basis === basis)
  if (all.length === 0) return null
  switch (basis) {
    case 'printed':
      return single(mostAgreed(all, pairs))
    case 'derived':
      return single(all.reduce((best, w) => (varianceOf(w) < varianceOf(best) ? w : best)))
    default:
      return meanOf(all, basis)
  }
}

/** The figure that agrees with most of the rest; the first of them where several do. */
function mostAgreed(figures: readonly Weighed[], pairs: Decision['pairs']): Weighed | undefined {
  const disputes = (w: Weighed): number =>
    pairs.filter((p) => (p.a === w || p.b === w) && p.en > DISPUTED_ABOVE).length
  let best = figures[0]
  for (const w of figures) if (best !== undefined && disputes(w) < disputes(best)) best = w
  return best
}

const varianceOf = (w: Weighed): number =>
  w.compared === null ? Number.POSITIVE_INFINITY : variance(w.compared)

function single(w: Weighed | undefined): Value | null {
  return w === undefined || w.adopted === null
    ? null
    : { adopted: w.adopted, compared: w.compared, basis: w.evidence.basis, from: [w] }
}

function meanOf(all: readonly Weighed[], basis: Basis | 'mean'): Value | null {
  const values = all.flatMap((w) => (w.compared === null ? [] : [w.compared]))
  if (values.length === 0) return null
  const { mean, excess } = weightedMean(values)
  return { adopted: mean, compared: mean, basis, from: [...all], excess }
}

function comparePairs(usable: readonly Weighed[]): Decision['pairs'] {
  const pairs: Decision['pairs'] = []
  const expanded = usable.map((w) => (w.compared === null ? null : expand(w.compared)))
  for (let i = 0; i < usable.length; i++) {
    for (let j = i + 1; j < usable.length; j++) {
      const [a, b] = [usable[i] as Weighed, usable[j] as Weighed]
      const [ea, eb] = [expanded[i], expanded[j]]
      if (a.compared === null || b.compared === null || !ea || !eb) continue
      pairs.push({ a, b, en: normalisedError(a.compared, b.compared, ea, eb) })
    }
  }
  return pairs
}

function whyNothing(weighed: readonly Weighed[]): string {
  if (weighed.length === 0) return 'There is no evidence yet.'
  const [first] = weighed
  if (weighed.length === 1) return first?.problem ?? 'Its evidence has no value.'
  return `None of its ${weighed.length} pieces of evidence can be used: ${weighed
    .map((w) => `${w.evidence.id}: ${w.problem ?? 'no value.'}`)
    .join(' ')}`
}
