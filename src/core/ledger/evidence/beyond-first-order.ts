import type { EdgeKind, FormulaEdge } from '../../formula/formula-edges.ts'
import { PLAIN } from '../../formula/formula-edges.ts'
import type { Arithmetic } from '../../uncertainty/arithmetic.ts'
import { expand } from '../../uncertainty/coverage.ts'
import { mayBeCurved, TOLERANCE } from '../../uncertainty/curvature.ts'
import { type Interval, intervalTakingIn } from '../../uncertainty/interval.ts'
import { newSource } from '../../uncertainty/source.ts'
import { Trials } from '../../uncertainty/trials.ts'
import { exact, propagate, type Uncertain } from '../../uncertainty/uncertain.ts'
import { reason } from '../../words/core-words.ts'
import type { AnyReason } from '../../words/reason.ts'
import type { EvaluationContext } from './evaluation-context.ts'
import type { Valuation, Which, WorkOut } from './valuation.ts'

/** What is worked out from dimensions: a formula, or a relation's left less its right. */
export interface Worked {
  /** As it is written. */
  text: string
  names: readonly string[]
  linear: boolean
  edges(): readonly FormulaEdge[]
  value<N>(of: (name: string) => N, arithmetic: Arithmetic<N>): N
}

/** What a value is once first order has been looked into. */
export interface FirstOrderLook {
  /** As it was, or with what first order leaves out as a source of its own, so that ± U reaches its farther end. */
  value: Uncertain
  /** Where first order does not hold. */
  interval?: Interval
}

/** Enough for the ends of a 95 % interval to be off by a third of a hundredth in what they hold, one time in ten. */
const TRIALS = 10_000
const SEED = 1901
/** Trials that may have no value before the interval of the rest is no longer a 95 % one, or before a divisor counts as one that may be nothing. */
const MOST_WITHOUT = 0.01

type Dimensions = Pick<EvaluationContext, 'curved'> & { within: Pick<Valuation<Uncertain>, 'dimension'> }

/**
 * Looks into whether first order holds for a value that was worked out by it: quickly, and by Monte Carlo where it may not.
 * The best estimate stays what it is.
 * @param firstOrder the value by first order, finite
 * @returns the value, or why it can't be relied on
 */
export function lookIntoFirstOrder(
  worked: Worked,
  which: Which,
  firstOrder: Uncertain,
  { curved, within }: Dimensions,
): FirstOrderLook | { problem: AnyReason } {
  const inputs = worked.names.map((name) => ({ name, x: within.dimension(name, which), by: curved(name) }))
  const rests = inputs.some(({ by }) => by !== null)
  if (worked.linear && !rests) return { value: firstOrder }
  const moving = inputs.filter(({ x }) => x.sources.length > 0)
  if (moving.length === 0) return { value: firstOrder }
  const places = new Map(moving.map(({ name }, i) => [name, i]))
  const still = new Map(inputs.map(({ name, x }) => [name, x.value]))
  const f = (values: readonly number[]): number =>
    worked.value((name) => values[places.get(name) ?? -1] ?? still.get(name) ?? Number.NaN, PLAIN)
  const xs = moving.map(({ x }) => x)
  if (!rests && !mayBeCurved(f, xs, firstOrder)) return { value: firstOrder }
  return simulated(worked, which, firstOrder, { curved, within })
}

/** A dimension as it is drawn: its value by first order, or by what it is worked out from, and in which trial that was. */
interface Drawn {
  by: WorkOut | null
  x: Uncertain
  value: number
  trial: number
}

function simulated(
  worked: Worked,
  which: Which,
  firstOrder: Uncertain,
  { curved, within }: Dimensions,
): FirstOrderLook | { problem: AnyReason } {
  const edges = worked.edges().map((edge) => ({ edge, beyond: 0, negative: 0 }))
  const dimensions = { adopted: new Map<string, Drawn>(), compared: new Map<string, Drawn>() }
  // What is drawn is known once all has been asked for; till then it is taken as it stands.
  const drawn = new Set([firstOrder])
  let realise = (x: Uncertain): number => {
    drawn.add(x)
    return x.value
  }
  let trial = 0
  const inTrial: Valuation<number> = {
    arithmetic: { ...PLAIN, of: (x) => realise(x) },
    measure() {
      throw new RangeError('What is scaled is taken by first order here.')
    },
    dimension(name, which) {
      let one = dimensions[which].get(name)
      if (one === undefined) {
        one = { by: curved(name), x: within.dimension(name, which), value: Number.NaN, trial: -1 }
        dimensions[which].set(name, one)
      }
      if (one.trial !== trial) {
        one.value = one.by === null ? realise(one.x) : one.by(which, inTrial)
        one.trial = trial
      }
      return one.value
    },
  }
  const { arithmetic } = inTrial
  const of = (name: string): number => inTrial.dimension(name, which)
  worked.value(of, arithmetic)
  const trials = new Trials(SEED, drawn)
  realise = (x) => trials.of(x)
  const values = new Float64Array(TRIALS)
  const straight = new Float64Array(TRIALS)
  let n = 0
  for (trial = 1; trial <= TRIALS; trial++) {
    trials.next()
    const value = worked.value(of, arithmetic)
    for (const watched of edges) watch(watched, watched.edge.value(of, arithmetic))
    straight[trial - 1] = trials.of(firstOrder)
    if (Number.isFinite(value)) values[n++] = value
  }
  const most = MOST_WITHOUT * TRIALS
  const worst = edges.find(({ edge: { kind }, beyond, negative }) =>
    PASSED[kind] ? beyond > most : beyond > 0 || Math.min(negative, TRIALS - negative) > most,
  )
  const { text: formula } = worked
  if (worst !== undefined) {
    const { kind, text: part, names } = worst.edge
    return { problem: reason('formula.part-at-its-edge', { formula, edge: kind, part, names }) }
  }
  if (TRIALS - n > most) return { problem: reason('formula.mostly-without-value', { formula }) }
  const interval = intervalTakingIn(firstOrder.value, values.subarray(0, n).sort())
  const { U } = expand(firstOrder)
  const { low, high } = intervalTakingIn(firstOrder.value, straight.sort())
  const near = (a: number, b: number): boolean => Math.abs(a - b) <= TOLERANCE * U
  if (near(interval.low, low) && near(interval.high, high)) return { value: firstOrder }
  return { value: reaching(firstOrder, interval, formula), interval }
}

/** Whether an edge is passed where the part has no value; otherwise where it changes its sign. */
const PASSED: Readonly<Record<EdgeKind, boolean>> = { root: true, sine: true, divisor: false, tangent: false }

function watch(counts: { edge: FormulaEdge; beyond: number; negative: number }, x: number): void {
  const { kind } = counts.edge
  const watched = kind === 'tangent' ? Math.cos(x) : x
  if (watched < 0) counts.negative += 1
  const beyond = kind === 'root' ? x < 0 : kind === 'sine' ? Math.abs(x) > 1 : watched === 0
  if (beyond || Number.isNaN(x)) counts.beyond += 1
}

/**
 * A value whose expanded uncertainty reaches the farther end of an interval, by a source of its own: what first order leaves
 * out goes along with none of its inputs. It is worth as many degrees of freedom as leave the coverage factor as it is.
 */
function reaching(x: Uncertain, { low, high }: Interval, text: string): Uncertain {
  const { u, U, k, dof } = expand(x)
  const farther = Math.max(x.value - low, high - x.value)
  if (farther <= U) return x
  const more = (farther / k) ** 2 - u ** 2
  const estimate = { dof: Number.isFinite(dof) ? (dof * more) / (more + 2 * u ** 2) : dof }
  const curve = {
    ...exact(0),
    sources: [newSource(`curve of ${text}`, estimate)],
    coefficients: [Math.sqrt(more)],
  }
  return propagate(x.value, [x, curve], [1, 1])
}
