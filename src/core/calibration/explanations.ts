import { Matrix, pseudoInverse } from 'ml-matrix'
import { element } from '../linear-algebra/element.ts'
import type { ViewMapping } from '../mapping/view-mapping.ts'
import { variance } from '../uncertainty/covariance.ts'
import type { Uncertain } from '../uncertainty/uncertain.ts'
import { CalibrationError } from './calibration-error.ts'
import { fits, probability, withClosings } from './goodness-of-fit.ts'
import type { StatedSize } from './reference.ts'
import type { ResidualTest } from './residual-test.ts'
import { type Solution, solveMapping } from './solve-mapping.ts'
import { isLength, uncertainStretch } from './stretch.ts'

/** One way in which figured sizes that do not fit may be wrong: those left out are, and the rest are right. */
export interface Explanation {
  /** References, one or two, as they stand in the view. */
  leftOut: readonly string[]
  rest: Solution
  /** Probability of the misfit of the rest with its closings; null when nothing is redundant in it. */
  p: number | null
  /** Chi-square of the rest and of what it makes of the paper, beyond what chance gives. */
  unfit: number
  /** The same, with what leaving out a second has to be worth. */
  cost: number
}

/** Chi-square by which an explanation must be worse than the best to be out of question: 1 % with one degree of freedom. */
export const CLEARLY_WORSE_BY = 6.63

/**
 * What leaving out a second must explain beyond the first to stand in the way of its being set aside: that two figures are
 * misread alike is seldom. Of mappings, too, less is no reason to change one (Burnham & Anderson 2002, section 2.6).
 */
const WORTH_A_SECOND = 2

/** Pairs are looked for among so many of the references that fit worst, and so many of the best are tried. */
const WORST = 12
const PAIRS_TRIED = 6

/** Side by side a person can weigh so many. */
const AT_MOST = 4

/** References that may be wrong together, and the parameters that the rest come to. */
export interface Alternative {
  leftOut: readonly string[]
  theta: readonly Uncertain[]
  /** Probability of the misfit of the rest; null when nothing is redundant in it. */
  p: number | null
}

/** What is known where it is asked what explains a misfit. */
export interface Misfit {
  view: ViewMapping
  sizes: readonly StatedSize[]
  all: Solution
  test: ResidualTest
  /** Normalised residuals, one for each size. */
  w: readonly number[]
  /** References that are suspect by them. */
  suspects: ReadonlySet<string>
  /** Standard uncertainty of the stretch of the sheet as of paper, a share; where the sizes do not state it. */
  paper: number | undefined
  /** What residuals are uncertain by, where another solution has it. */
  errors: Solution['errors'] | undefined
}

/** What may explain a misfit, likeliest first: each suspect left out, and pairs that stand against the rest together. */
export function explanations(misfit: Misfit): Explanation[] {
  const singles = [...misfit.suspects].flatMap((reference) => explanation(misfit, [reference]) ?? [])
  const told = new Set(singles.filter(agrees).flatMap(({ leftOut }) => leftOut))
  const pairs = likelyPairs(misfit, told).flatMap((pair) => explanation(misfit, pair) ?? [])
  return [...singles, ...pairs].sort((a, b) => a.cost - b.cost)
}

/**
 * Those of them that a person should see side by side: the rest of each agree, and about as well as those of the best. What
 * has more left out than another of them has nothing to add to it.
 * @param setAside the reference that is taken for the wrong one, where one is
 */
export function sideBySide(sorted: readonly Explanation[], setAside: string | undefined): Alternative[] {
  const best = sorted[0]
  if (best === undefined) return []
  return sorted
    .filter((one) => agrees(one) && one.unfit - best.unfit <= CLEARLY_WORSE_BY)
    .filter(({ leftOut }) => setAside === undefined || !leftOut.includes(setAside))
    .slice(0, AT_MOST)
    .map(({ leftOut, rest, p }) => ({ leftOut, theta: rest.theta, p }))
}

const agrees = ({ rest }: Explanation): boolean => fits(rest)

function explanation({ view, sizes, paper, errors }: Misfit, leftOut: readonly string[]): Explanation | null {
  const kept = without(sizes, leftOut)
  const rest = solved(view, kept, errors)
  if (rest === null) return null
  const fit = withClosings(kept, rest)
  const unfit = fit.chi2 - fit.dof + ofPaper(view, rest, sizes, paper)
  const further = (leftOut.length - 1) * (CLEARLY_WORSE_BY + WORTH_A_SECOND)
  return { leftOut, rest, p: probability(fit), unfit, cost: unfit + further }
}

/** Chi-square of the stretch that a solution comes to, of a sheet of which nothing is known but that it is paper. */
function ofPaper(
  view: ViewMapping,
  { theta }: Solution,
  sizes: readonly StatedSize[],
  paper: number | undefined,
): number {
  if (paper === undefined || !sizes.every(isLength)) return 0
  const stretch = uncertainStretch(view.mapping, theta)
  return stretch.value === 0 ? 0 : stretch.value ** 2 / (paper ** 2 + variance(stretch))
}

/**
 * Pairs without which the others should fit best, by how much chi-square falls when they are left out:
 * vᵀ C⁻¹ v with v = (W r) and C = (W Q_r W) of their equations, in first order.
 */
function likelyPairs({ sizes, w, test }: Misfit, told: ReadonlySet<string>): string[][] {
  const worst = worstFirst(sizes, w)
    .filter((reference) => !told.has(reference))
    .slice(0, WORST)
  return worst
    .flatMap((a, i) =>
      worst.slice(i + 1).map((b) => ({ pair: [a, b], falls: fallsWithout([a, b], sizes, test) })),
    )
    .sort((a, b) => b.falls - a.falls)
    .slice(0, PAIRS_TRIED)
    .map(({ pair }) => inOrder(pair, sizes))
}

function worstFirst(sizes: readonly StatedSize[], w: readonly number[]): string[] {
  const worst = new Map<string, number>()
  sizes.forEach((size, i) => {
    if (!isLength(size)) return
    worst.set(size.reference, Math.max(worst.get(size.reference) ?? 0, Math.abs(element(w, i))))
  })
  return [...worst].sort(([, a], [, b]) => b - a).map(([reference]) => reference)
}

/** As the sizes stand in the view. */
function inOrder(pair: readonly string[], sizes: readonly StatedSize[]): string[] {
  const all = sizes.map(({ reference }) => reference)
  return [...pair].sort((a, b) => all.indexOf(a) - all.indexOf(b))
}

function fallsWithout(
  pair: readonly string[],
  sizes: readonly StatedSize[],
  { weighted, cofactor, rows }: ResidualTest,
): number {
  const theirs = sizes.flatMap(({ reference }, i) => (pair.includes(reference) ? element(rows, i) : []))
  const v = Matrix.columnVector(theirs.map((i) => element(weighted, i)))
  // Where nothing checks a part of them, that part tells nothing either way.
  const inverse = pseudoInverse(cofactor.selection(theirs, theirs))
  return v.transpose().mmul(inverse).mmul(v).get(0, 0)
}

/** The solution of what is kept; null where it determines no mapping. */
function solved(
  view: ViewMapping,
  kept: readonly StatedSize[],
  errors: Solution['errors'] | undefined,
): Solution | null {
  try {
    return solveMapping(view, kept, undefined, errors === undefined ? {} : { errors })
  } catch (error) {
    if (error instanceof CalibrationError) return null
    throw error
  }
}

/** The stated sizes without those of some references. */
export const without = (sizes: readonly StatedSize[], leftOut: readonly string[]): readonly StatedSize[] =>
  leftOut.length === 0 ? sizes : sizes.filter(({ reference }) => !leftOut.includes(reference))
