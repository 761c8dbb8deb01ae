import { type Circle, circleThrough, type ThreePoints } from '../../geometry/circle-through.ts'
import { type Pixel, pixel } from '../../geometry/frames.ts'
import * as elements from '../../linear-algebra/elements-unchecked.ts'
import { invertSpd, timesVector } from '../../linear-algebra/invert-spd.ts'
import { reason } from '../../words/core-words.ts'
import type { NoStrokeReason } from '../../words/strokes.ts'
import type { AcceptedStroke } from '../accept/acceptance.ts'
import { barGrid, reachAcross } from '../filter/bar-grid.ts'
import { type Across, climbRidge, type Ridge, type RidgeGrid, scoreRidge } from '../filter/ridge-score.ts'
import { type AlongAcross, type ReferenceCurve, roundCurve } from '../strip/reference-curve.ts'
import { piecesFor, SEEN_OF_PIECE, type Strip, stripAlong } from '../strip/strip.ts'
import type { Traced } from '../trace/trace-stroke.ts'
import { MOST_ENLARGED } from '../window/search-window.ts'
import { acceptTraced } from './accept-traced.ts'
import { detect, isReason, type SearchContext } from './detector.ts'
import { followRun } from './follow-run.ts'
import { WIDEST } from './line-detector.ts'
import { distanceOf, nearestRidges } from './nearest-ridges.ts'
import { traceRidge } from './trace-ridge.ts'

const { f64 } = elements

const SMALLEST_RADIUS = 4
/** Paper shrinks by up to 1 % more one way than the other; on whole circles from this radius on that is seen, pixels. */
const LEAST_OVAL = 30
const SHORTEST_PIECE = 4
const STRONG = 5
/** So much farther from the picks than it was seen a stroke is another one, pixels. */
const STRAYED = 3

/** Where a round stroke is looked for: a strip round the circle through three picks, with bars by piece and place across. */
interface RoundSearch extends RidgeGrid {
  context: SearchContext
  picks: ThreePoints
  circle: Circle
  /** The whole circle, or the arc from the first pick through the second to the third. */
  whole: boolean
  strip: Strip
  across: Across
}

/** Looks for the round stroke near three places and traces it. */
export function detectCircle(
  context: SearchContext,
  picks: ThreePoints,
  whole: boolean,
): AcceptedStroke | NoStrokeReason {
  const circle = circleThrough(picks)
  if (circle === null || circle.radius < SMALLEST_RADIUS) return reason('stroke.picks-on-one-line')
  const search = roundSearch(context, picks, circle, whole)
  return detect({
    propose: () => nearestRidges(roundRidges(search), context.reach),
    refine: (ridge) => refineRound(search, ridge),
    accept(traced) {
      if (asideOf(picks, traced) > context.reach) return reason('stroke.none-along-circle')
      const inflation = acceptTraced(context, traced, {
        share: 0.4,
        length: Math.min(16, 0.5 * search.length),
      })
      return isReason(inflation) ? inflation : { traced, inflation }
    },
    strayed: ({ traced }, ridge) => asideOf(picks, traced) > distanceOf(ridge) + STRAYED,
    nothing: reason('stroke.none-along-circle'),
  })
}

function roundSearch(
  context: SearchContext,
  picks: ThreePoints,
  circle: Circle,
  whole: boolean,
): RoundSearch {
  const curve = curveRound(picks, circle, whole)
  const widest = Math.min(WIDEST, 1.2 * circle.radius)
  const half = reachAcross(MOST_ENLARGED * context.reach, widest)
  const high = Math.min(half, circle.radius - 1)
  const count = piecesFor(curve.length, SHORTEST_PIECE)
  const strip = stripAlong(context.grey, curve, count, -half, high, SEEN_OF_PIECE)
  const grid = barGrid(strip, -half, high, widest)
  const across = acrossRound(picks, circle, strip, context.reach)
  const { noise, ink } = context
  const length = Math.min(curve.length, count * SEEN_OF_PIECE)
  return { context, picks, circle, whole, strip, grid, across, length, noise, ink }
}

/** The curve round the circle through three places, once about or from the first through the second to the third. */
function curveRound(picks: ThreePoints, { centre, radius }: Circle, whole: boolean): ReferenceCurve {
  const angle = (p: Pixel) => Math.atan2(p[1] - centre[1], p[0] - centre[0])
  const a = angle(picks[0])
  if (whole) return roundCurve(centre, radius, a, 2 * Math.PI, radius < LEAST_OVAL ? undefined : [0, 0])
  const turn = (x: number) => ((x % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI)
  const onward = turn(angle(picks[2]) - a)
  const isOnTheWay = turn(angle(picks[1]) - a) < onward
  return roundCurve(centre, radius, a, isOnTheWay ? onward : onward - 2 * Math.PI)
}

/** Where the circle through the three places, moved inwards by what steers it, lies in each piece. */
function acrossRound(picks: ThreePoints, circle: Circle, strip: Strip, reach: number): Across {
  const enlarged = enlargement(picks, circle, strip)
  const { centre, radius } = circle
  const most = MOST_ENLARGED * reach + WIDEST / 2
  return (steer, out) => {
    const moved = circleThrough(movedBy(picks, circle, steer))
    out.fill(Number.NaN)
    if (moved === null) return
    strip.pieces.forEach((p, k) => {
      if (f64(enlarged, k) > MOST_ENLARGED) return
      const [nx, ny] = strip.curve.across(p.middle)
      const dx = moved.centre[0] - centre[0]
      const dy = moved.centre[1] - centre[1]
      const along = -(nx * dx + ny * dy)
      const root = moved.radius ** 2 - dx * dx - dy * dy + along * along
      if (!(root > 0)) return
      const away = radius - along - Math.sqrt(root)
      if (Math.abs(away) <= most) out[k] = away
    })
  }
}

/** The picks, each moved inwards by so much, pixels. */
function movedBy(
  [a, b, c]: ThreePoints,
  { centre, radius }: Circle,
  [byA = 0, byB = 0, byC = 0]: readonly number[],
): ThreePoints {
  const inwards = ([x, y]: Pixel, by: number): Pixel => {
    const f = by / radius
    return pixel(x + (centre[0] - x) * f, y + (centre[1] - y) * f)
  }
  return [inwards(a, byA), inwards(b, byB), inwards(c, byC)]
}

/** By how much an error of the three picks is enlarged in each piece, to first order. */
function enlargement(picks: ThreePoints, { centre, radius }: Circle, strip: Strip): Float64Array {
  const rows = picks.map(([x, y]) => [(x - centre[0]) / radius, (y - centre[1]) / radius, 1] as const)
  const square = new Float64Array(9)
  for (const row of rows)
    row.forEach((u, i) => {
      row.forEach((v, j) => {
        square[i * 3 + j] = f64(square, i * 3 + j) + u * v
      })
    })
  const inverse = invertSpd(square, 3)
  const enlarged = new Float64Array(strip.pieces.length)
  if (inverse === null) return enlarged.fill(1)
  return enlarged.map((_, k) => {
    const [nx, ny] = strip.curve.across(strip.pieces[k]?.middle ?? 0)
    const [u, v, w] = timesVector(inverse, Float64Array.of(-nx, -ny, 1))
    return rows.reduce(
      (sum, row) => sum + Math.abs((u ?? 0) * row[0] + (v ?? 0) * row[1] + (w ?? 0) * row[2]),
      0,
    )
  })
}

function roundRidges(search: RoundSearch): Ridge[] {
  const { reach } = search.context
  const places = new Float64Array(search.grid.pieces)
  const ridges: Ridge[] = []
  const step = Math.max(1, reach / 4)
  for (let a = -reach; a <= reach + 1e-9; a += step)
    for (let b = -reach; b <= reach + 1e-9; b += step)
      for (let c = -reach; c <= reach + 1e-9; c += step) {
        search.across([a, b, c], places)
        const ridge = scoreRidge(search, [a, b, c], places, STRONG)
        if (ridge !== null) ridges.push(ridge)
      }
  return ridges
}

/** Fits the circle that a ridge is, from the best way near it. */
function refineRound(search: RoundSearch, rough: Ridge): Traced | NoStrokeReason {
  const { context, picks, circle, strip, grid, whole } = search
  const ridge = climbRidge(search, rough, search.across, [2, 0.25])
  const places = new Float64Array(grid.pieces)
  search.across(ridge.steer, places)
  const moved = movedBy(picks, circle, ridge.steer)
  const round = circleThrough(moved)
  if (round === null) return reason('stroke.unsettled-circle')
  const way = (k: number) => {
    const offset = f64(places, k)
    return Number.isNaN(offset) ? null : { offset, turn: turnAt(strip, places, k) }
  }
  const onto = curveRound(moved, round, whole)
  const traced = traceRidge(context.grey, { strip, grid, ridge, way, onto })
  if (traced === null) return reason('stroke.unsettled-circle')
  return followRun(context.grey, traced.traced, (circle) => curveRound(picks, circle, whole))
}

/**
 * How far the picks are from what was traced, on the average: nothing inside the stroke. Of two round strokes about one
 * centre a way that began on one and ended on the other may be drawn over to the one that was not meant.
 */
function asideOf(picks: ThreePoints, { strip, fit }: Traced): number {
  const curve = strip.curve.moved(fit.parameters)
  const at: AlongAcross = { along: Number.NaN, across: Number.NaN }
  const away = picks.reduce((sum, [x, y]) => {
    curve.locate(x, y, at)
    return sum + Math.abs(at.across)
  }, 0)
  return Math.max(0, away / picks.length - fit.width / 2)
}

function turnAt(strip: Strip, places: Float64Array, k: number): number {
  const a = places[k - 1]
  const b = places[k + 1]
  const size = (strip.pieces[k]?.to ?? 1) - (strip.pieces[k]?.from ?? 0)
  return a === undefined || b === undefined || Number.isNaN(a + b) ? 0 : (b - a) / (2 * size)
}
