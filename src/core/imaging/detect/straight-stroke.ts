import { reason } from '../../words/core-words.ts'
import type { NoStrokeReason, ProfileReason } from '../../words/strokes.ts'
import type { AcceptedStroke, Demands } from '../accept/acceptance.ts'
import { isTexture } from '../accept/texture.ts'
import { barGrid } from '../filter/bar-grid.ts'
import { type Across, climbRidge, type Ridge, type RidgeGrid } from '../filter/ridge-score.ts'
import { alignedProfile } from '../strip/aligned-profile.ts'
import { type ReferenceCurve, straightCurve } from '../strip/reference-curve.ts'
import { SEEN_OF_PIECE, type Strip, stripAlong } from '../strip/strip.ts'
import { acceptTraced } from './accept-traced.ts'
import { isReason, type SearchContext } from './detector.ts'
import { type TracedRidge, traceRidge } from './trace-ridge.ts'

/** Where a straight stroke is looked for: a strip along a curve, with bars by piece and place across. */
export interface StraightSearch extends RidgeGrid {
  context: SearchContext
  strip: Strip
  /** How far across is looked at, pixels. */
  half: number
  demands: Demands
  /** Pieces that may not count, and why. */
  barred: readonly (ProfileReason | undefined)[]
  across: Across
}

/** A straight stroke that was fitted. */
export interface RefinedStraight extends TracedRidge {
  /** How far from the middle of its strip it was seen at the start, pixels. */
  aside: number
}

/** @param count pieces; half: how far across; widest: bar looked for, pixels */
export function straightSearch(
  context: SearchContext,
  curve: ReferenceCurve,
  {
    count,
    half,
    widest,
    demands,
    barred = [],
  }: {
    count: number
    half: number
    widest: number
    demands: Demands
    barred?: readonly (ProfileReason | undefined)[]
  },
): StraightSearch {
  const strip = stripAlong(context.grey, curve, count, -half, half, SEEN_OF_PIECE)
  const grid = barGrid(strip, -half, half, widest)
  barred.forEach((why, k) => {
    if (why !== undefined) grid.there[k] = false
  })
  const across: Across = ([start = 0, end = 0], out) => {
    strip.pieces.forEach((p, k) => {
      out[k] = start + ((end - start) * p.middle) / curve.length
    })
  }
  const { noise, ink } = context
  const length = Math.min(curve.length, count * SEEN_OF_PIECE)
  return { context, strip, grid, half, demands, barred, across, length, noise, ink }
}

/** Fits the stroke that a ridge is, from the best way near it. */
export function refineStraight(search: StraightSearch, rough: Ridge): RefinedStraight | NoStrokeReason {
  const { context, strip, grid, half, barred } = search
  const { curve } = strip
  const ridge = climbRidge(search, rough, search.across, [1, 0.25])
  if (!(ridge.strength > 0)) return reason('stroke.none-along-line')
  const [start = 0, end = 0] = ridge.steer
  const places = new Float64Array(grid.pieces)
  search.across(ridge.steer, places)
  const turn = (end - start) / curve.length
  const onto = straightCurve(curve.place(0, start), curve.place(curve.length, end))
  const way = (k: number) => ({ offset: places[k] ?? 0, turn })
  const traced = traceRidge(context.grey, { strip, grid, ridge, way, onto, most: half, barred })
  return traced === null ? reason('stroke.unsettled') : { ...traced, aside: Math.abs(start) }
}

export function acceptStraight(
  { context, strip, half, demands }: StraightSearch,
  { traced, offsets, aside }: RefinedStraight,
): AcceptedStroke | NoStrokeReason {
  const inflation = acceptTraced(context, traced, demands)
  if (isReason(inflation)) return inflation
  const profile = alignedProfile(strip, offsets, half - aside - 1)
  return isTexture(profile, traced.fit) ? reason('stroke.texture') : { traced, inflation }
}

/** Fits the stroke that a ridge is, and says whether it is one. */
export function settleStraight(search: StraightSearch, rough: Ridge): AcceptedStroke | NoStrokeReason {
  const refined = refineStraight(search, rough)
  return isReason(refined) ? refined : acceptStraight(search, refined)
}

/** A ridge of which no more is known than what it looks like: along the middle of its strip. */
export const alongMiddle = (width: number, contrast: number): Ridge => ({
  steer: [0, 0],
  width,
  contrast,
  strength: 0,
})
