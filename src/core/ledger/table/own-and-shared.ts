import { element } from '../../linear-algebra/element.ts'
import { standardUncertainty } from '../../uncertainty/covariance.ts'
import { KNOWN, type VarianceEstimate } from '../../uncertainty/source.ts'
import { type Proportional, proportional } from './proportional.ts'
import { type Reach, type Reaching, type RowValue, rowsOf, sourcesOfRows } from './reach.ts'

/** What only one row has of what rests on one estimate of variance, as one. */
export interface Own {
  /** KNOWN for whatever is taken as known. */
  estimate: VarianceEstimate
  /** Its part of the row's u². */
  square: number
}

/** Sources in proportion, with the rows they move and what their variance rests on. */
export interface Shared extends Proportional {
  /** KNOWN for whatever is taken as known. */
  estimate: VarianceEstimate
  /** Indices of two rows or more, ascending. */
  reached: readonly number[]
  /** Standard uncertainty of each of them. */
  u: readonly number[]
}

/**
 * What each row has for itself, and what several rows have, by the first of them. In an order that does not depend on
 * when the sources were made.
 */
export function ownAndShared(rows: readonly RowValue[]): { own: Own[][]; shared: Map<number, Shared[]> } {
  const own = rows.map((): Own[] => [])
  const blocks = new Map<Reach, Block[]>()
  for (const one of sourcesOfRows(rows)) {
    const estimate = Number.isFinite(one.source.estimate.dof) ? one.source.estimate : KNOWN
    if (one.reach.before === null) addOwn(element(own, one.reach.row), estimate, element(one.parts, 0))
    else addToBlock(blocks, one, estimate)
  }
  for (const list of own) list.sort((a, b) => compare(dofOf(a), dofOf(b)) || b.square - a.square)
  return { own, shared: byFirstRow(blocks, rows) }
}

function addOwn(list: Own[], estimate: VarianceEstimate, part: number): void {
  const known = list.find((o) => o.estimate === estimate)
  if (known === undefined) list.push({ estimate, square: part * part })
  else known.square += part * part
}

/** Sources that move the same rows and rest on one estimate of variance. */
interface Block {
  estimate: VarianceEstimate
  members: Reaching[]
}

function addToBlock(blocks: Map<Reach, Block[]>, one: Reaching, estimate: VarianceEstimate): void {
  const ofReach = blocks.get(one.reach) ?? []
  const block = ofReach.find((b) => b.estimate === estimate)
  if (block !== undefined) block.members.push(one)
  else blocks.set(one.reach, [...ofReach, { estimate, members: [one] }])
}

function byFirstRow(blocks: ReadonlyMap<Reach, Block[]>, rows: readonly RowValue[]): Map<number, Shared[]> {
  const us = rows.map(({ adopted, factor }) => (adopted === null ? 0 : standardUncertainty(adopted) * factor))
  const shared = new Map<number, Shared[]>()
  for (const [reach, ofReach] of blocks) {
    const reached = rowsOf(reach)
    const u = reached.map((row) => element(us, row))
    const first = element(reached, 0)
    const found = ofReach.flatMap(({ estimate, members }) =>
      proportional(members, u).map((group): Shared => ({ ...group, estimate, reached, u })),
    )
    shared.set(first, [...(shared.get(first) ?? []), ...found])
  }
  for (const list of shared.values()) list.sort(inOrder)
  return shared
}

/** What moves most rows first; then by the rest of what is seen of it. */
const inOrder = (a: Shared, b: Shared): number =>
  b.reached.length - a.reached.length ||
  firstDifference(a.reached, b.reached) ||
  compare(dofOf(a), dofOf(b)) ||
  compare(a.labels.join(), b.labels.join()) ||
  firstDifference(digitsOf(b), digitsOf(a)) ||
  a.order - b.order

const compare = <T extends number | string>(a: T, b: T): number => (a < b ? -1 : a > b ? 1 : 0)

/** What is taken as known comes first. */
const dofOf = ({ estimate }: { estimate: VarianceEstimate }): number =>
  estimate === KNOWN ? 0 : estimate.dof

/** Parts in billionths of u, so that rounding turns no order about. */
const digitsOf = ({ parts, u }: Shared): number[] =>
  parts.map((part, i) => Math.round((1e9 * part) / element(u, i)))

function firstDifference(a: readonly number[], b: readonly number[]): number {
  const at = a.findIndex((value, i) => value !== b[i])
  return at === -1 ? 0 : element(a, at) - element(b, at)
}
