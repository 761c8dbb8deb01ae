import { Matrix } from 'ml-matrix'
import type { Radians } from '../../geometry/angle-units.ts'
import { element } from '../../linear-algebra/element.ts'
import { adjust, quadraticForm } from '../../uncertainty/adjustment.ts'
import { covariance, standardUncertainty } from '../../uncertainty/covariance.ts'
import { chiSquareExceeds } from '../../uncertainty/distributions.ts'
import { propagate, type Uncertain } from '../../uncertainty/uncertain.ts'
import { weighting } from '../../uncertainty/weighted-mean.ts'
import { isBeyondPaper } from './paper.ts'
import type { PreparedView } from './prepare-view.ts'

/** A view that knows by itself how its sheet is stretched. */
export interface Knowing {
  id: string
  name: string
  grain: Radians
  /** ln of the scale along over the scale across. */
  stretch: Uncertain
  /** Standard uncertainty of it. */
  u: number
}

/** How a sheet is stretched by those of its views that tell. */
export interface SheetStretch {
  /** In the order of the job. */
  knowing: readonly Knowing[]
  /** Those of them that agree. */
  agreeing: readonly Knowing[]
  /** Probability that chance alone sets them all so far apart; null where there is but one. */
  p: number | null
  /** With nothing known but that it is paper; null where there is no sheet. */
  paper: Uncertain | null
}

const DISAGREE_BELOW = 0.05
/** Chi-square by which leaving out another must be worse: 1 % with one degree of freedom. */
const CLEARLY_WORSE_BY = 6.63

/**
 * Brings together what the views of a sheet tell of its stretch. Where they do not agree and one alone is why, it is left
 * out; where it may be any, none agrees.
 * @param before of the same sheet: it is taken where the same views tell the same
 */
export function sheetStretch(
  views: readonly PreparedView[],
  paper: Uncertain | null,
  before: SheetStretch | undefined,
): SheetStretch {
  const knowing = knowingOf(views)
  if (before !== undefined && before.paper === paper && sameKnowing(before.knowing, knowing)) return before
  const chi2 = disagreement(knowing)
  const p = knowing.length < 2 ? null : chiSquareExceeds(chi2, knowing.length - 1)
  const agrees = p === null || p >= DISAGREE_BELOW
  const agreeing = agrees ? knowing : withoutOdd(knowing, paper)
  return { knowing, agreeing: agreeing.filter((one) => mayLend(one, agreeing, paper)), p, paper }
}

/** One view alone whose paper did what paper hardly ever does may have a misread figure, which is not to spread to others. */
const mayLend = (one: Knowing, agreeing: readonly Knowing[], paper: Uncertain | null): boolean =>
  agreeing.length > 1 || isLikely(one, paper)

/** Whether paper does what a view tells. */
const isLikely = ({ stretch, u }: Knowing, paper: Uncertain | null): boolean =>
  paper === null || !isBeyondPaper(stretch.value, u, standardUncertainty(paper))

/**
 * Views that were chosen to have two scales and determine both; where there are none, those that could as well. A view
 * with one scale by choice is not asked beside others: the choice says that there is no stretch to speak of.
 */
function knowingOf(views: readonly PreparedView[]): Knowing[] {
  const able = views.filter(({ tells }) => tells)
  const chosen = able.filter(({ view }) => view.mapping === 'two-axis')
  const all = (chosen.length > 0 ? chosen : able).flatMap(({ view, basis, stretch }): Knowing[] =>
    basis === null || stretch === null
      ? []
      : [
          {
            id: view.id,
            name: view.name,
            grain: basis.mapping.frame.grain,
            stretch,
            u: standardUncertainty(stretch),
          },
        ],
  )
  const [first] = all
  return first === undefined ? [] : all.filter(({ grain }) => isComparable(grain, first.grain))
}

const sameKnowing = (a: readonly Knowing[], b: readonly Knowing[]): boolean =>
  a.length === b.length &&
  a.every((one, i) => one.stretch === b[i]?.stretch && one.name === b[i]?.name && one.grain === b[i]?.grain)

/**
 * Those that agree once one is left out, or once those are left out whose paper did what paper hardly ever does; none where
 * nothing tells which are odd.
 */
function withoutOdd(knowing: readonly Knowing[], paper: Uncertain | null): readonly Knowing[] {
  const one = withoutOne(knowing)
  if (one.length > 0) return one
  const likely = knowing.filter((view) => isLikely(view, paper))
  const agree = likely.length > 0 && likely.length < knowing.length && agreesAmong(likely)
  return agree ? likely : []
}

/** Where leaving out another does as well, it is none. */
function withoutOne(knowing: readonly Knowing[]): readonly Knowing[] {
  if (knowing.length < 3) return []
  const [best, second] = knowing
    .map((odd) => knowing.filter((one) => one !== odd))
    .map((rest) => ({ rest, chi2: disagreement(rest) }))
    .sort((a, b) => a.chi2 - b.chi2)
  if (best === undefined || second === undefined) return []
  return agreesAmong(best.rest) && second.chi2 - best.chi2 > CLEARLY_WORSE_BY ? best.rest : []
}

const agreesAmong = (views: readonly Knowing[]): boolean =>
  views.length < 2 || chiSquareExceeds(disagreement(views), views.length - 1) >= DISAGREE_BELOW

/** Chi-square of their differences, with all that they share; 0 where they are one witness. */
function disagreement(knowing: readonly Knowing[]): number {
  const [first] = knowing
  if (first === undefined || knowing.length < 2) return 0
  const values = knowing.map((one) => turned(one, first.grain))
  const variance = new Matrix(values.map((a) => values.map((b) => covariance(a, b))))
  const observed = values.map(({ value }) => value)
  const mean = adjust(Matrix.ones(values.length, 1), observed, variance, 0)
  if (mean === null) return 0
  const middle = element(mean.step, 0)
  return quadraticForm(
    mean.weight,
    observed.map((value) => value - middle),
  )
}

/** More witnesses make the stretch little surer, and each row that rests on it longer by all their sources. */
const MOST_WITNESSES = 3

/** The surest of those that agree with a view, in the order of the job. */
export function witnessesFor(id: string, { agreeing }: SheetStretch): readonly Knowing[] {
  const others = agreeing.filter((one) => one.id !== id)
  const surest = new Set([...others].sort((a, b) => a.u - b.u).slice(0, MOST_WITNESSES))
  return others.filter((one) => surest.has(one))
}

/** The stretch that a view tells, for another direction of along: what is along to one is across to another. */
function turned({ stretch, grain }: Knowing, towards: Radians): Uncertain {
  const turn = Math.cos(2 * (grain - towards))
  return turn === 1 ? stretch : propagate(turn * stretch.value, [stretch], [turn])
}

/** What is along to one view must be nearly along, or across, to the other. */
const isComparable = (a: Radians, b: Radians): boolean => Math.abs(Math.cos(2 * (a - b))) > 0.9

/** The mean of what views tell, turned to a direction of along; null where there are none. */
export function meanStretch(knowing: readonly Knowing[], towards: Radians): Uncertain | null {
  const values = knowing
    .filter(({ grain }) => isComparable(grain, towards))
    .map((one) => turned(one, towards))
  if (values.length === 0) return null
  const { weights } = weighting(values)
  return propagate(
    values.reduce((sum, x, i) => sum + element(weights, i) * x.value, 0),
    values,
    weights,
  )
}
