import { inverse, Matrix } from 'ml-matrix'
import { dot } from '../linear-algebra/dot.ts'
import { element } from '../linear-algebra/element.ts'
import { NORMAL_95 } from '../uncertainty/distributions.ts'
import { areASum, membersOf, statedOf } from './closing-members.ts'
import type { Closing } from './closings.ts'
import type { StatedSize } from './reference.ts'

/** By how much the figures of some closings miss. */
export interface ClosureFit {
  /** Of each closing, mm: of a sum by its figures alone, otherwise sum of factor · residual. */
  misclosures: readonly number[]
  /** What each may miss by as its figures are rounded, standard, mm. */
  us: readonly number[]
  /** Of the rounding of each figure in each closing, standard, mm. */
  roundings: readonly (readonly number[])[]
  chi2: number
  /** n × n: what the closings add to the weight of the residuals; null where nothing closes. */
  weight: Matrix | null
}

/** Bends of lengths under picks are no errors of a figure: so many times their size passes. */
export const BENDS_PASS = 3

/** A figure that is so much more finely written than another takes nothing of a misclosure as it is. */
const SMALLEST_PART = 1e-6

/** No figure of a length is surer than this share of the longest. */
const SMALLEST_SHARE = 1e-9

/** Standard deviation of a figure that is written to a graduation of 1. Source: JCGM 100:2008, 4.3.7. */
const ROUNDED = 1 / Math.sqrt(12)

/** What the figure of each equation is uncertain by as it is rounded, mm; 0 where its graduation is not known. */
const figureRoundings = (sizes: readonly StatedSize[]): number[] =>
  sizes.flatMap(({ equations, graduation }) => equations.map(() => (graduation ?? 0) * ROUNDED))

/**
 * How misclosures are shared out: by the graduations of the figures where rounding explains them, else evenly, for then
 * a figure is wrong, and it may be any.
 * @param residuals at any place of the parameters: what closes is free of them
 */
export function figureShares(
  sizes: readonly StatedSize[],
  closings: readonly Closing[],
  residuals: readonly number[],
): number[] {
  const fit = closureFit(sizes, closings, residuals)
  const rounded = figureRoundings(sizes)
  const known = closings.every(({ factors }) => factors.every((f, j) => f === 0 || element(rounded, j) > 0))
  const byRounding = known && closings.every((_, k) => closes(fit, k))
  if (!byRounding) return rounded.map(() => 1)
  const least = SMALLEST_PART * Math.max(...rounded)
  return rounded.map((u) => (u > 0 ? Math.max(u, least) : 1))
}

/** Compares what each closing misses by with what the rounding of its figures lets it miss. */
export function closureFit(
  sizes: readonly StatedSize[],
  closings: readonly Closing[],
  residuals: readonly number[],
): ClosureFit {
  const rounded = figureRoundings(sizes)
  const misclosures = closings.map((closing) => missed(sizes, closing, residuals))
  const roundings = closings.map(({ factors }) => inClosing(factors, rounded))
  if (closings.length === 0) return { misclosures, us: [], roundings, chi2: 0, weight: null }
  const parts = new Matrix(
    closings.map(({ factors }, k) => factors.map((f, j) => f * element(element(roundings, k), j))),
  )
  const variance = parts.mmul(parts.transpose())
  // Figures that are written to next to nothing would count without end; so small a share of the longest keeps that finite.
  const least = (SMALLEST_SHARE * Math.max(...sizes.map(statedOf))) ** 2
  closings.forEach(({ curvature }, k) => {
    variance.set(k, k, variance.get(k, k) + (BENDS_PASS * curvature) ** 2 + least)
  })
  const factors = new Matrix(closings.map((closing) => [...closing.factors]))
  const precision = inverse(variance)
  const m = Matrix.columnVector(misclosures)
  return {
    misclosures,
    us: variance.diagonal().map(Math.sqrt),
    roundings,
    chi2: m.transpose().mmul(precision).mmul(m).get(0, 0),
    weight: factors.transpose().mmul(precision).mmul(factors),
  }
}

/** What a closing misses by; the bends of lengths under picks are no part of what figures add up to. */
function missed(sizes: readonly StatedSize[], closing: Closing, residuals: readonly number[]): number {
  const members = membersOf(sizes, closing)
  return areASum(members)
    ? members.reduce((sum, { factor, size }) => sum + Math.sign(factor) * statedOf(size), 0)
    : dot(closing.factors, residuals)
}

/** Whether a closing misses by no more than the rounding of its figures explains, 19 times in 20. */
export const closes = ({ misclosures, us }: ClosureFit, k: number): boolean =>
  Math.abs(element(misclosures, k)) <= NORMAL_95 * element(us, k)

/** Of two figures for one length, what they differ by shows in the finer. */
function inClosing(factors: readonly number[], rounded: readonly number[]): readonly number[] {
  const own = factors.flatMap((f, j) => (f === 0 ? [] : [j]))
  if (own.length !== 2) return rounded
  const known = own.map((j) => element(rounded, j)).filter((u) => u > 0)
  const finer = known.length === 0 ? 0 : Math.min(...known)
  return rounded.map((u, j) => (own.includes(j) ? finer : u))
}
