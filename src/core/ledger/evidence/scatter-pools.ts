import { chiSquareWithEstimatesExceeds } from '../../uncertainty/distributions.ts'
import type { VarianceEstimate } from '../../uncertainty/source.ts'
import type { FoundSpread } from './found-spread.ts'
import type { LimitOf } from './instrument-limits.ts'

/** What all readings of one kind with one instrument tell of how they scatter, each set about its own mean. */
export interface ScatterPool {
  /** Sum of the squares, mm² or rad² or mm⁴. */
  readonly squares: number
  /** 0 where nothing was measured twice. */
  readonly dof: number
  /** Shared by all that takes its scatter from the pool, so that sums of such values know no more than it does. */
  readonly estimate: VarianceEstimate
  /** Sets that scatter so much more than the rest that they are no part of it. */
  readonly apart: readonly FoundSpread[]
}

export type ScatterPools = ReadonlyMap<string, ScatterPool>

/**
 * What a guess at a standard deviation is worth that may be half as much again, or half.
 * Source: JCGM 100:2008, G.4.2, eq. G.3.
 */
const GUESS_DOF = 2

/** Of readings of which nothing was measured twice. */
export const emptyPool = (): ScatterPool => pooled([], () => 0)

/**
 * Pools the scatter of readings: two or three tell little of it, all that were taken with one instrument much.
 * @param spreads in the order of the job, in which sums are taken
 * @param limitOf what an instrument may be off by
 * @param before pools that come to the same are taken from it
 * Source: pooled variance, JCGM 100:2008, H.3.6 and the note to 4.2.4.
 */
export function scatterPools(
  spreads: Iterable<FoundSpread>,
  limitOf: LimitOf,
  before?: ScatterPools,
): ScatterPools {
  const members = new Map<string, FoundSpread[]>()
  for (const spread of spreads) {
    const known = members.get(spread.pool)
    if (known === undefined) members.set(spread.pool, [spread])
    else known.push(spread)
  }
  const pools = new Map<string, ScatterPool>()
  for (const [name, own] of members) {
    const [pool, was] = [pooled(own, limitOf), before?.get(name)]
    pools.set(name, was !== undefined && same(was, pool) ? was : pool)
  }
  return pools
}

function pooled(members: readonly FoundSpread[], limitOf: LimitOf): ScatterPool {
  const told = members.filter(({ dof }) => dof > 0)
  // Several such hide one another among the rest.
  const apart = told.filter((one) => isFarOut(one, limitOf(one)))
  let rest = told.filter((one) => !apart.includes(one))
  for (;;) {
    const total = totalOf(rest)
    const worst = standingApart(rest, total)
    if (worst === undefined) {
      const { squares, dof } = total
      return { squares, dof, estimate: { dof: dof === 0 ? GUESS_DOF : dof }, apart }
    }
    apart.push(worst)
    rest = rest.filter((one) => one !== worst)
  }
}

/** Readings scatter about as far as their instrument may be off; so many times as far there is a slip among them. Common practice, no source. */
const FAR_OUT = 20

const isFarOut = ({ squares, dof, step }: FoundSpread, limit: number): boolean =>
  limit > 0 && squares > dof * (FAR_OUT * Math.max(limit, step)) ** 2

interface Total {
  squares: number
  dof: number
}

function totalOf(members: readonly FoundSpread[]): Total {
  let [squares, dof] = [0, 0]
  for (const one of members) {
    squares += one.squares
    dof += one.dof
  }
  return { squares, dof }
}

/** Of pools in which all sets scatter alike, one in so many has a set that is taken for standing apart. */
const IMPROBABLE = 0.001

/**
 * The set that scatters most, where it does so improbably more than the rest: with a slip in it, or of a rough face. One
 * such would make all that was measured with the instrument uncertain.
 * Source: the ratio of variances (Fisher's F), its level shared among the sets (Bonferroni).
 */
function standingApart(members: readonly FoundSpread[], total: Total): FoundSpread | undefined {
  if (members.length < 2) return undefined
  const worst = members.reduce((most, one) => (one.squares * most.dof > most.squares * one.dof ? one : most))
  const dof = total.dof - worst.dof
  // Sets that agree to the last digit are not known any better than to that.
  const step = Math.min(...members.map((one) => one.step))
  const variance = Math.max(0, total.squares - worst.squares) / dof + step ** 2
  if (!(variance > 0)) return undefined
  const p = chiSquareWithEstimatesExceeds(worst.squares / variance, worst.dof, dof)
  return p < IMPROBABLE / members.length ? worst : undefined
}

const same = (a: ScatterPool, b: ScatterPool): boolean =>
  a.squares === b.squares &&
  a.dof === b.dof &&
  a.apart.length === b.apart.length &&
  a.apart.every((one, i) => one === b.apart[i])
