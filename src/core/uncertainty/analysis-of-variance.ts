import { chiSquareWithEstimatesExceeds } from './distributions.ts'
import { meanOf } from './type-a.ts'

/** A sum of squares and its degrees of freedom. */
export interface Squares {
  squares: number
  dof: number
}

/** How observations scatter within groups, and the groups among themselves. */
export interface WithinAndBetween {
  within: Squares
  between: Squares
  /** Mean square between over mean square within; null where either has no degrees of freedom. */
  f: number | null
  /** Probability that chance alone gives an F above this where the groups do not differ; null likewise. */
  p: number | null
}

/** Whether chance alone gives such groups less than once in twenty times. Source: JCGM 100:2008, H.5.2.2. */
export const differ = ({ p }: Pick<WithinAndBetween, 'p'>): boolean => p !== null && p < 0.05

/** Source: JCGM 100:2008, H.5.2.2, eq. H.27. */
export function compareSquares(within: Squares, between: Squares): WithinAndBetween {
  if (within.dof === 0 || between.dof === 0) return { within, between, f: null, p: null }
  const [own, theirs] = [within.squares / within.dof, between.squares / between.dof]
  const f = own === 0 && theirs === 0 ? 0 : theirs / own
  const p = f === Infinity ? 0 : chiSquareWithEstimatesExceeds(f * between.dof, between.dof, within.dof)
  return { within, between, f, p }
}

/** The mean of grouped observations, and what it is worth. */
export interface Grouped extends WithinAndBetween {
  /** Mean of the groups' means, each group counting once. */
  mean: number[]
  means: number[][]
  /** Experimental standard deviation of one observation: of all as one, and within groups; null: no group has two. */
  s: number
  sWithin: number | null
  /** Standard deviation of the groups beyond what is within them; 0 where that explains it; null likewise. */
  sBetween: number | null
  /** Variance of each coordinate of the mean for observations of variance 1 that are all independent. */
  share: number
  /** Standard uncertainty of each coordinate of the mean, with its degrees of freedom. */
  u: number
  dof: number
  /** What that is worked out from: the scatter of the groups' means, or that of all observations as one. */
  by: 'groups' | 'all'
}

const distance2 = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + (value - (b[i] ?? 0)) ** 2, 0)

/**
 * One-way analysis of variance with random effects: observations of one group share an error of that group.
 *
 * The mean is that of the groups' means. Its uncertainty is the larger of two: that by the scatter of the groups' means,
 * J − 1 degrees of freedom a coordinate, and that by the scatter of all observations as one, N − 1. The guide takes the
 * second unless an F-test at 5 % tells the groups apart; with few groups that test seldom does so where it should. Of
 * two groups of three, whose errors scatter as much as those within them, the 95 % interval of a coordinate then holds
 * the truth in 85 % of all cases, and in 79 % where all is always taken as one. By the larger of the two it is 94 %; of
 * the distance between two such points, which adds two of them, 96 %.
 * @param groups two or more, each of one or more observations; an observation is a vector whose coordinates are all
 *   uncertain alike
 * Source: JCGM 100:2008, H.5: eq. H.24 to H.28, for groups of unequal size as Searle, Casella & McCulloch, Variance
 * Components (1992), 3.6.
 */
export function groupedObservations(groups: readonly (readonly (readonly number[])[])[]): Grouped {
  const all = groups.flat()
  const sizes = groups.map(({ length }) => length)
  const [j, n, each] = [groups.length, all.length, all[0]?.length ?? 0]
  const means = groups.map(meanOf)
  const grand = meanOf(all)
  const squaresWithin = groups.reduce(
    (sum, group, i) => sum + group.reduce((s, one) => s + distance2(one, means[i] ?? []), 0),
    0,
  )
  const squaresBetween = means.reduce((sum, mean, i) => sum + (sizes[i] ?? 0) * distance2(mean, grand), 0)
  const within = { squares: squaresWithin, dof: each * (n - j) }
  const between = { squares: squaresBetween, dof: each * (j - 1) }
  const mean = meanOf(means)
  const share = sizes.reduce((sum, size) => sum + 1 / size, 0) / (j * j)
  const dofOfAll = each * (n - 1)
  const s2 = (squaresWithin + squaresBetween) / dofOfAll
  const byGroups = means.reduce((sum, one) => sum + distance2(one, mean), 0) / between.dof / j
  const byAll = s2 * share
  const [own, size] = [
    within.dof === 0 ? null : squaresWithin / within.dof,
    (n - sizes.reduce((sum, one) => sum + one * one, 0) / n) / (j - 1),
  ]
  return {
    ...compareSquares(within, between),
    mean,
    means,
    s: Math.sqrt(s2),
    sWithin: own === null ? null : Math.sqrt(own),
    sBetween: own === null ? null : Math.sqrt(Math.max(0, (squaresBetween / between.dof - own) / size)),
    share,
    ...(byGroups >= byAll
      ? { u: Math.sqrt(byGroups), dof: between.dof, by: 'groups' }
      : { u: Math.sqrt(byAll), dof: dofOfAll, by: 'all' }),
  }
}
