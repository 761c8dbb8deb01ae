import type { ProfileReason } from '../../words/strokes.ts'
import { type PieceCentre, pieceCentres } from '../fit/piece-centres.ts'
import { guessAt } from '../fit/strip-equations.ts'
import { fitStrip, HOPELESS, type StripFit } from '../fit/strip-fit.ts'
import { noiseInflation } from '../noise/residual-correlation.ts'
import { type PieceSelection, rejectOutliers } from '../outliers/outlier-rejection.ts'
import { alignedProfile, type ProfileEdges, profileEdges, type WayAcross } from '../strip/aligned-profile.ts'
import type { ReferenceCurve } from '../strip/reference-curve.ts'
import { type Strip, stripAlong } from '../strip/strip.ts'
import type { GreyPicture } from '../window/grey-picture.ts'

/** A stroke followed along a curve that now lies on its centreline. */
export interface Traced {
  strip: Strip
  fit: StripFit
  centres: (PieceCentre | null)[]
  judged: PieceSelection
}

/** Where a coarse search saw it. */
export interface StrokeSighting {
  strip: Strip
  /** Across the curve of the strip, by piece; null where the piece does not show the stroke. */
  offsets: readonly (WayAcross | null)[]
  width: number
  contrast: number
  /** The curve that the offsets lead to. */
  onto: ReferenceCurve
  /** How far across from there it is looked at, pixels. */
  half: number
  /** Pieces that may not count, and why. */
  barred?: readonly (ProfileReason | undefined)[]
}

const ROUNDS = 8
/** When fewer of the pieces than this share agree after two rounds, it is no use going on. */
const LEAST_KEPT = 0.15
/** Noise that goes together makes centres at most so many times more uncertain, as a variance. */
const MOST_INFLATED = 8
/** No scan is longer, pixels: a curve that is has run away. */
const LONGEST = 2e5
const FIRST_BLUR = 0.7
/** The strip is cut anew where the stroke lies farther from its curve, or is so much wider or narrower, pixels. */
const OFF_CURVE = 0.02
const OTHER_WIDTH = 0.5
/** Of ground to each side, pixels. */
const LEAST_MARGIN = 1.5

/** What stays the same from round to round. */
interface Frame {
  grey: GreyPicture
  half: number
  barred: StrokeSighting['barred']
  /** Of ground beside the stroke, left and right, pixels. */
  margins: readonly [number, number]
}

interface TraceState {
  strip: Strip
  fit: StripFit
  /** The pieces that were fitted, and what that goes by once pieces are left out. */
  kept: readonly boolean[]
  judged?: PieceSelection
  /** Of the stroke when the strip was cut. */
  width: number
  /** Of the variance of centres by noise that goes together, once it is asked for. */
  inflation?: number
}

/**
 * Follows a stroke: edges from the averaged profile, then the fit on the raw pixels, the pieces that do not belong left
 * out, until nothing changes.
 * @returns null when there is nothing that settles
 */
export function traceStroke(grey: GreyPicture, seen: StrokeSighting): Traced | null {
  const edges = profileEdges(alignedProfile(seen.strip, seen.offsets, seen.half), seen.width, seen.contrast)
  let state = edges && begin(grey, seen, edges)
  if (edges === null || state === null) return null
  const frame: Frame = {
    grey,
    half: seen.half,
    barred: seen.barred,
    margins: [
      Math.max(edges.left - edges.groundLeft, LEAST_MARGIN),
      Math.max(edges.groundRight - edges.right, LEAST_MARGIN),
    ],
  }
  for (let round = 0; round < ROUNDS; round++) {
    const least = Math.max(3, round > 0 ? LEAST_KEPT * state.kept.length : 0)
    const after = step(frame, state, least)
    if (after === null || 'centres' in after) return after
    state = after
  }
  const { strip, fit, judged } = state
  return judged ? { strip, fit, centres: pieceCentres(strip, fit), judged } : null
}

function begin(grey: GreyPicture, seen: StrokeSighting, edges: ProfileEdges): TraceState | null {
  const { groundLeft: low, groundRight: high, left, right } = edges
  if (!(high > low) || !(seen.onto.length < LONGEST)) return null
  const width = right - left
  const strip = stripAlong(grey, seen.onto, seen.strip.pieces.length, low, high)
  const kept = seen.offsets.map((o) => o !== null)
  const fit = fitStrip(
    strip,
    { parameters: seen.onto.shifted((left + right) / 2), width, blur: FIRST_BLUR },
    kept,
  )
  return fit === null || isHopeless(fit) ? null : { strip, fit, kept, width }
}

/** @returns what was traced when nothing changes any more; null when it does not settle */
function step(frame: Frame, before: TraceState, least: number): TraceState | Traced | null {
  const cut = onItsCurve(frame, before)
  if (cut === null) return null
  const { strip, fit } = cut
  const centres = pieceCentres(strip, fit)
  const judge = (inflation?: number) => rejectOutliers(strip, fit, centres, frame.barred, inflation)
  let { inflation } = cut
  let judged = judge(inflation)
  if (inflation === undefined && judged.byNoise) {
    inflation = inflationOf(strip, fit, judged.kept)
    judged = judge(inflation)
  }
  const { kept } = judged
  const same = kept.every((k, i) => k === cut.kept[i])
  if (same || isHopeless(fit) || kept.filter(Boolean).length < least) return { strip, fit, centres, judged }
  const again = fitStrip(strip, fit, kept)
  return (
    again && {
      strip,
      fit: again,
      kept,
      judged,
      width: cut.width,
      ...(inflation !== undefined && { inflation }),
    }
  )
}

/** Cuts the strip anew along the stroke when that has moved or changed its width. */
function onItsCurve({ grey, half, margins: [left, right] }: Frame, state: TraceState): TraceState | null {
  const { strip, fit, kept, width } = state
  const moved = largestOffset(strip, fit)
  if (!(moved < half)) return null
  if (moved <= OFF_CURVE && Math.abs(fit.width - width) <= OTHER_WIDTH) return state
  const curve = strip.curve.moved(fit.parameters)
  if (!(curve.length < LONGEST)) return null
  const cut = stripAlong(grey, curve, strip.pieces.length, -fit.width / 2 - left, fit.width / 2 + right)
  const again = fitStrip(cut, { ...fit, parameters: new Float64Array(curve.parameters) }, kept)
  return again && { ...state, strip: cut, fit: again, width: fit.width }
}

/**
 * By how much the noise of the pieces that are trusted even if it is white makes centres more uncertain than white noise.
 * It is told from these alone: what disturbs the others looks like noise that goes together.
 */
function inflationOf(strip: Strip, fit: StripFit, kept: readonly boolean[]): number {
  if (kept.filter(Boolean).length < 3) return 1
  return Math.min(Math.max(noiseInflation(strip, fit, kept).centre, 1), MOST_INFLATED)
}

const isHopeless = ({ blur, width }: StripFit): boolean => blur > HOPELESS || blur > 0.7 * width + 1.6

const largestOffset = (strip: Strip, fit: StripFit): number =>
  strip.pieces.reduce((most, piece) => Math.max(most, Math.abs(guessAt(piece, fit).offset)), 0)
