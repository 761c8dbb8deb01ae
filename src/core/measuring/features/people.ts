import type { MarkPick } from '../../job/model/types.ts'
import { type Grouped, groupedObservations } from '../../uncertainty/analysis-of-variance.ts'
import { meanOf } from '../../uncertainty/type-a.ts'
import { type Deviation, deviationsOf, scaledDeviations } from './repeated-picks.ts'

/** How the picks of several people scatter: of one person's hand, and of the people among themselves. Pixels. */
export interface PeopleScatter {
  /** How many people. */
  n: number
  /** Experimental standard deviation of one pick, all of them taken as one person's. */
  s: number
  /** Of one person's picks about their own mean; null where nobody picked twice. */
  within: number | null
  /** Standard deviation between people beyond what that explains; null likewise. */
  between: number | null
  /** Probability that people who pick alike scatter more among themselves than these do; null likewise. */
  p: number | null
  /** What the uncertainty is worked out from: the scatter of the people's means, or that of all picks as one. */
  by: 'groups' | 'all'
}

/**
 * Picks by who made them, in the order in which they were made. Sittings of one person are not told apart: what is the
 * person's own way of picking they have in common, so taken for several people they would seem surer than they are. A
 * pick of which nobody says who made it is counted to the person who is named first.
 */
export function byPerson<P extends MarkPick>(picks: readonly P[]): P[][] {
  const first = picks.find(({ by }) => by !== undefined)?.by
  const people = new Map<string | undefined, P[]>()
  for (const pick of picks) {
    const by = pick.by ?? first
    const own = people.get(by)
    if (own === undefined) people.set(by, [pick])
    else own.push(pick)
  }
  return [...people.values()]
}

/** What an analysis of picks says of the people. */
export const peopleScatter = ({ means, s, sWithin, sBetween, p, by }: Grouped): PeopleScatter => ({
  n: means.length,
  s,
  within: sWithin,
  between: sBetween,
  p,
  by,
})

/** The mean of picks, in what it is uncertain, and how people differ where there are several. */
export interface MeanOfPeople {
  mean: number[]
  deviations: Deviation[]
  people?: PeopleScatter
}

/** How vectors of what was found are looked at to compare people. */
export interface Yardsticks {
  /** Numbers that are each as surely found as the others. */
  alike(found: readonly number[]): number[]
  /** The number that tells how people scatter, pixels. */
  shown(found: readonly number[]): number
}

/**
 * The mean of what was found, each time a vector: of one person of all picks, of several of their means. What several
 * found is worth as many degrees of freedom as people but one, also where all is taken as one person's: a way of picking
 * that moves one of its numbers only is seldom told from chance by all of them together.
 * @param groups what each person found
 */
export function meanOfPeople(
  groups: readonly (readonly (readonly number[])[])[],
  { alike, shown }: Yardsticks,
  label: string,
): MeanOfPeople {
  const all = groups.flat()
  if (groups.length === 1) return { mean: meanOf(all), deviations: deviationsOf(all, label) }
  const means = groups.map(meanOf)
  const { by, share, p } = groupedObservations(groups.map((group) => group.map(alike)))
  const told = groupedObservations(groups.map((group) => group.map((one) => [shown(one)])))
  return {
    mean: meanOf(means),
    deviations:
      by === 'groups'
        ? deviationsOf(means, label)
        : scaledDeviations(all, label, Math.sqrt(share / (all.length - 1)), means.length - 1),
    people: { ...peopleScatter(told), p, by },
  }
}

/** Numbers that are uncertain by so much each, apart from one another. */
export const byScales =
  (scales: readonly number[]) =>
  (found: readonly number[]): number[] =>
    found.map((value, i) => value / (scales[i] || 1))
