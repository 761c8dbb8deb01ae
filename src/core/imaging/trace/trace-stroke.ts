import { type PieceCentre, pieceCentres } from '../fit/piece-centres.ts'
import { guessAt } from '../fit/strip-equations.ts'
import { fitStrip, HOPELESS, type StripFit } from '../fit/strip-fit.ts'
import { noiseInflation } from '../noise/residual-correlation.ts'
import { type PieceSelection, rejectOutliers } from '../outliers/outlier-rejection.ts'
import { alignedProfile, profileEdges } from '../strip/aligned-profile.ts'
import type { ReferenceCurve } from '../strip/reference-curve.ts'
import { type Strip, stripAlong } from '../strip/strip.ts'
import type { GreyWindow } from '../window/grey-window.ts'

/** A stroke followed along a curve that now lies on its centreline. */
export interface Traced {
  strip: Strip
  fit: StripFit
  centres: (PieceCentre | null)[]
  judged: PieceSelection
}

/** Where a coarse search saw it. */
export interface StrokeSighting {
  curve: ReferenceCurve
  /** Across the curve, by piece; null where the piece does not show the stroke. */
  offsets: ({ offset: number; turn: number } | null)[]
  width: number
  contrast: number
  /** Pieces that may not count, and why. */
  barred?: readonly (string | undefined)[]
}

const ROUNDS = 8
/** When fewer of the pieces than this share agree after two rounds, it is no use going on. */
const LEAST_KEPT = 0.15
/** Noise that goes together makes centres at most so many times more uncertain, as a variance. */
const MOST_INFLATED = 8
/** No scan is longer, pixels: a curve that is has run away. */
const LONGEST = 2e5

/**
 * Follows a stroke: edges from the averaged profile, then the fit on the raw pixels, the pieces that do not belong left
 * out, until nothing changes.
 * @param onto the curve that the offsets seen lead to
 * @returns null when there is nothing that settles
 */
export function traceStroke(
  grey: GreyWindow,
  coarse: Strip,
  seen: StrokeSighting,
  onto: ReferenceCurve,
  half: number,
): Traced | null {
  const edges = profileEdges(alignedProfile(coarse, seen.offsets, half), seen.width, seen.contrast)
  if (edges === null) return null
  const count = coarse.pieces.length
  const shift = (edges.left + edges.right) / 2
  let width = edges.right - edges.left
  const low = edges.groundLeft
  const high = edges.groundRight
  if (!(high > low) || !(onto.length < LONGEST)) return null
  let strip = stripAlong(grey, onto, count, low, high)
  let kept = seen.offsets.map((o) => o !== null)
  const start = new Float64Array(onto.parameters)
  if (onto.parameters >= 3) start[2] = -shift
  else start.fill(shift)
  let fit = fitStrip(strip, { parameters: start, width, blur: 0.7 }, kept)
  if (fit === null) return null
  if (isHopeless(fit)) return null
  let centres: (PieceCentre | null)[] = []
  let judged: PieceSelection | null = null
  let inflation: number | undefined
  for (let round = 0; round < ROUNDS; round++) {
    const moved = largestOffset(strip, fit)
    if (!(moved < half)) return null
    if (moved > 0.02 || Math.abs(fit.width - width) > 0.5) {
      width = fit.width
      const margins = [Math.max(edges.left - low, 1.5), Math.max(high - edges.right, 1.5)] as const
      const curve = strip.curve.moved(fit.parameters)
      if (!(curve.length < LONGEST)) return null
      strip = stripAlong(grey, curve, count, -width / 2 - margins[0], width / 2 + margins[1])
      const again = fitStrip(strip, { ...fit, parameters: new Float64Array(curve.parameters) }, kept)
      if (again === null) return null
      fit = again
    }
    centres = pieceCentres(strip, fit)
    judged = rejectOutliers(strip, fit, centres, seen.barred, inflation)
    if (inflation === undefined && judged.byNoise) {
      inflation = inflationOf(strip, fit, judged.kept)
      judged = rejectOutliers(strip, fit, centres, seen.barred, inflation)
    }
    const same = judged.kept.every((k, i) => k === kept[i])
    if (same || isHopeless(fit)) return { strip, fit, centres, judged }
    kept = judged.kept
    if (kept.filter(Boolean).length < Math.max(3, round > 0 ? LEAST_KEPT * count : 0))
      return { strip, fit, centres, judged }
    const again = fitStrip(strip, fit, kept)
    if (again === null) return null
    fit = again
  }
  return judged === null ? null : { strip, fit, centres: pieceCentres(strip, fit), judged }
}

/**
 * By how much the noise of the pieces that are trusted even if it is white makes centres more uncertain than white noise.
 * It is told from these alone: what disturbs the others looks like noise that goes together.
 */
function inflationOf(strip: Strip, fit: StripFit, trusted: readonly boolean[]): number {
  if (trusted.filter(Boolean).length < 3) return 1
  return Math.min(Math.max(noiseInflation(strip, fit, trusted).centre, 1), MOST_INFLATED)
}

const isHopeless = ({ blur, width }: StripFit): boolean => blur > HOPELESS || blur > 0.7 * width + 1.6

function largestOffset(strip: Strip, fit: StripFit): number {
  let most = 0
  strip.pieces.forEach((_, k) => {
    most = Math.max(most, Math.abs(guessAt(strip, k, fit).offset))
  })
  return most
}
