import type { Pixel } from '../../geometry/frames.ts'
import { reason } from '../../words/core-words.ts'
import type { NoStrokeReason } from '../../words/strokes.ts'
import type { AcceptedStroke } from '../accept/acceptance.ts'
import { reachAcross } from '../filter/bar-grid.ts'
import { type Ridge, scoreRidge } from '../filter/ridge-score.ts'
import { straightCurve } from '../strip/reference-curve.ts'
import { piecesFor } from '../strip/strip.ts'
import { detect, type SearchContext } from './detector.ts'
import { nearestRidges } from './nearest-ridges.ts'
import { acceptStraight, refineStraight, type StraightSearch, straightSearch } from './straight-stroke.ts'

/** Strokes up to this wide are looked for, pixels. */
export const WIDEST = 40
const SHORTEST_PIECE = 4
const SHORTEST_LINE = 8
/** Weaker than this over all of its length it is not even tried. */
const STRONG = 5

/** Looks for the straight stroke from near one place to near another, and traces it: the nearest that is one. */
export function detectLine(context: SearchContext, from: Pixel, to: Pixel): AcceptedStroke | NoStrokeReason {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  if (!(length >= SHORTEST_LINE)) return reason('stroke.picks-too-near', { least: SHORTEST_LINE })
  const search = straightSearch(context, straightCurve(from, to), {
    count: piecesFor(length, SHORTEST_PIECE),
    half: reachAcross(context.reach, WIDEST),
    widest: WIDEST,
    demands: { share: 0.4, length: Math.min(12, 0.5 * length) },
  })
  return detect({
    propose: () => nearestRidges(lineRidges(search), context.reach),
    refine: (ridge) => refineStraight(search, ridge),
    accept: (refined) => acceptStraight(search, refined),
    nothing: reason('stroke.none-along-line'),
  })
}

function lineRidges(search: StraightSearch): Ridge[] {
  const { reach } = search.context
  const places = new Float64Array(search.grid.pieces)
  const ridges: Ridge[] = []
  const attempt = (a: number, b: number) => {
    search.across([a, b], places)
    const ridge = scoreRidge(search, [a, b], places, STRONG)
    if (ridge !== null) ridges.push(ridge)
  }
  for (let a = -reach; a <= reach; a++) for (let b = -reach; b <= reach; b++) attempt(a, b)
  for (let a = reach + 2; a < reach + WIDEST / 2; a += 2) {
    attempt(a, a)
    attempt(-a, -a)
  }
  return ridges
}
