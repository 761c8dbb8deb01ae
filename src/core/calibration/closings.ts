import { addScaled } from '../linear-algebra/add-to.ts'
import { dependentRows } from '../linear-algebra/dependent-rows.ts'
import { dot } from '../linear-algebra/dot.ts'
import { element } from '../linear-algebra/element.ts'
import type { Linearised } from './linearise.ts'
import type { StatedSize } from './reference.ts'
import { isLength } from './stretch.ts'

/**
 * Stated sizes that close on themselves: over the same marks one follows from the others, whatever the picks. What they
 * miss by is none of the picks' doing and says nothing of the scale; it checks the figures alone.
 */
export interface Closing {
  /** The equation that follows from those before it. */
  row: number
  /** Factor of each equation, 1 for `row`: the sum of factor · residual is 0 when the figures close. */
  factors: readonly number[]
  /** What the sum may miss by because lengths are no linear function of picks, mm. */
  curvature: number
}

/** The sum is as good as free of the picks where first order leaves no more of them than so many times second order. */
const OF_SECOND_ORDER = 10

/** And no more than this share of what its sizes are uncertain by, one by one. */
const SMALL_SHARE = 0.1

/** A share that only rounding leaves. */
const ROUNDING = 1e-9

/** A factor that is a smaller share of the largest stands for the picks' own bends, and is left out where it may. */
const IDLE_FACTOR = 0.05

/**
 * Finds the stated sizes that close on themselves, in the order of the equations.
 * A–B, B–C and A–C along one line do so to first order, for B stands off the line by its picks only: the triangle that
 * three lengths are has no area to be measured by.
 */
export function findClosings(sizes: readonly StatedSize[], state: Linearised): Closing[] {
  const { errors } = state
  const variances = errors.map((row) => dot(row, row))
  const lengths = lengthsOf(sizes, state.computed)
  // A pick that is off across a length L by e lengthens it by e² / 2L.
  const bends = variances.map((v, i) => v / element(lengths, i))
  const weighted = (factors: ArrayLike<number>, of: readonly number[], power: 1 | 2): number =>
    of.reduce((sum, v, i) => sum + element(factors, i) ** 2 * (power === 1 ? v : v * v), 0)
  const isNothing = (factors: ArrayLike<number>, length: number): boolean => {
    const total = weighted(factors, variances, 1)
    // What has no error at all follows from nothing.
    if (total === 0) return false
    const second = OF_SECOND_ORDER ** 2 * weighted(factors, bends, 2)
    return length ** 2 <= Math.max(ROUNDING ** 2 * total, Math.min(second, SMALL_SHARE ** 2 * total))
  }
  return dependentRows(errors, isNothing).map(({ row, combination }) => {
    const factors = withoutIdle(combination, (f) => isNothing(f, lengthOfSum(f, errors)))
    return { row, factors, curvature: Math.sqrt(weighted(factors, bends, 2)) }
  })
}

/**
 * Length of each equation; of a rectangle's squareness, which is a difference, the longest of its reference. What is no
 * length does not bend.
 */
function lengthsOf(sizes: readonly StatedSize[], computed: readonly number[]): number[] {
  let row = 0
  return sizes.flatMap((size) => {
    const own = size.equations.map(() => Math.abs(element(computed, row++)))
    if (!isLength(size)) return own.map(() => Infinity)
    return size.part === 'squareness' ? own.map(() => longestOf(sizes, computed, size.reference)) : own
  })
}

function longestOf(sizes: readonly StatedSize[], computed: readonly number[], of: string): number {
  const references = sizes.flatMap(({ reference, equations }) => equations.map(() => reference))
  return Math.max(...computed.filter((_, i) => references[i] === of).map(Math.abs))
}

function lengthOfSum(factors: readonly number[], rows: readonly Float64Array[]): number {
  const sum = new Float64Array(rows[0]?.length ?? 0)
  rows.forEach((row, i) => {
    addScaled(sum, element(factors, i), row)
  })
  return Math.hypot(...sum)
}

function withoutIdle(factors: readonly number[], still: (factors: readonly number[]) => boolean): number[] {
  let kept = [...factors]
  const most = Math.max(...factors.map(Math.abs))
  const idle = factors
    .map((f, i) => ({ size: Math.abs(f), i }))
    .filter(({ size }) => size > 0 && size < IDLE_FACTOR * most)
    .sort((a, b) => a.size - b.size)
  for (const { i } of idle) {
    const without = kept.with(i, 0)
    if (still(without)) kept = without
  }
  return kept
}
