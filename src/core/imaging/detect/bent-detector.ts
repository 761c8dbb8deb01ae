import { type Pixel, pixel } from '../../geometry/frames.ts'
import { type AcceptedStroke, acceptStroke } from '../accept/acceptance.ts'
import { barAt, mapReach, type PieceMap, pieceMap } from '../filter/piece-map.ts'
import { type Path, tryPath } from '../filter/ridge-score.ts'
import { type ReferenceCurve, roundCurve } from '../strip/reference-curve.ts'
import { piecesFor, type Strip, stripAlong } from '../strip/strip.ts'
import { traceStroke } from '../trace/trace-stroke.ts'
import type { GreyWindow } from '../window/grey-window.ts'

/** Radii tried, pixels, a quarter apart: the fit finds the one between. */
const RADII = [6, 7.5, 9.5, 12, 15, 19] as const
/** Length of arc looked at, pixels, and at most so many radii of it. */
const LENGTH = 32
const MOST_OF_RADIUS = 4
const PIECE = 2.5
/** Wider strokes so strongly bent are hardly strokes any more, pixels. */
export const WIDEST_BENT = 9
/** How far across from the place seen the arc may lie, pixels. */
const ASIDE = 2
/** Signal to noise below which the fit would not be sure enough either. */
const LEAST_STRENGTH = 24
const DEMANDS = { share: 0.6, length: 12 }

/** A place on a stroke, and the direction in which it was seen to run there, radians. */
export interface Tangent {
  place: Pixel
  direction: number
}

interface Arc {
  strip: Strip
  map: PieceMap
  path: Path
  radius: number
  way: 1 | -1
}

/**
 * A stroke so strongly bent that no straight way fits it: a small circle, a fillet. Arcs that touch the way in which it was
 * seen to run are tried to both sides, and the strongest is traced.
 * @returns null when none of them settles to a stroke
 */
export function detectBent(grey: GreyWindow, seen: Tangent, noise: number): AcceptedStroke | null {
  let best: Arc | null = null
  for (const radius of RADII) {
    for (const way of [1, -1] as const) {
      const arc = seenAlong(grey, seen, radius, way, noise)
      if (arc !== null && arc.path.strength > (best?.path.strength ?? 0)) best = arc
    }
  }
  return best === null || best.path.strength < LEAST_STRENGTH ? null : settleArc(grey, seen, best)
}

/** The arc of a radius that touches a direction at a place, this far across from it; the place is its middle. */
function arcAt(
  { place: [x, y], direction }: Tangent,
  radius: number,
  way: 1 | -1,
  across: number,
): ReferenceCurve {
  const inwards = direction + (way * Math.PI) / 2
  const centre: Pixel = pixel(x + radius * Math.cos(inwards), y + radius * Math.sin(inwards))
  const own = radius - across
  const sweep = way * Math.min(LENGTH / own, MOST_OF_RADIUS)
  return roundCurve(centre, own, inwards + Math.PI - sweep / 2, sweep)
}

function seenAlong(grey: GreyWindow, seen: Tangent, radius: number, way: 1 | -1, noise: number): Arc | null {
  const curve = arcAt(seen, radius, way, 0)
  const half = mapReach(ASIDE, WIDEST_BENT)
  const high = Math.min(half, radius - 1)
  const strip = stripAlong(grey, curve, piecesFor(curve.length, PIECE), -half, high)
  const map = pieceMap(strip, -half, high, Math.min(WIDEST_BENT, 1.2 * radius))
  const places = new Float64Array(map.pieces)
  let path: Path | null = null
  for (let across = -ASIDE; across <= ASIDE; across += 0.5) {
    const here = tryPath(map, [across], places.fill(across), curve.length, noise)
    if (here !== null && here.strength > (path?.strength ?? 0)) path = here
  }
  return path === null ? null : { strip, map, path, radius, way }
}

function settleArc(
  grey: GreyWindow,
  seen: Tangent,
  { strip, map, path, radius, way }: Arc,
): AcceptedStroke | null {
  const across = path.steer[0] ?? 0
  const width = map.widths.indexOf(path.width)
  const offsets = strip.pieces.map((_, k) => {
    const bar = barAt(map, width, k, across) / path.contrast
    return bar > 0.45 && bar < 2 ? { offset: across, turn: 0 } : null
  })
  const along = { curve: strip.curve, offsets, width: path.width, contrast: path.contrast }
  const traced = traceStroke(grey, strip, along, arcAt(seen, radius, way, across), path.width / 2 + 9)
  if (traced === null) return null
  const inflation = acceptStroke(traced, DEMANDS)
  return typeof inflation === 'string' ? null : { traced, inflation }
}
