import { type Pixel, pixel } from '../../geometry/frames.ts'
import { reason } from '../../words/core-words.ts'
import type { NoStrokeReason } from '../../words/strokes.ts'
import type { AcceptedStroke } from '../accept/acceptance.ts'
import { type BarGrid, barGrid, reachAcross } from '../filter/bar-grid.ts'
import { type Ridge, scoreRidge } from '../filter/ridge-score.ts'
import { type ReferenceCurve, roundCurve } from '../strip/reference-curve.ts'
import { piecesFor, type Strip, stripAlong } from '../strip/strip.ts'
import { acceptTraced } from './accept-traced.ts'
import { detect, isReason, type SearchContext } from './detector.ts'
import { traceRidge } from './trace-ridge.ts'

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
  grid: BarGrid
  ridge: Ridge
  radius: number
  way: 1 | -1
}

/**
 * A stroke so strongly bent that no straight way fits it: a small circle, a fillet. Arcs that touch the way in which it was
 * seen to run are tried to both sides, and the strongest is traced.
 */
export function detectBent(context: SearchContext, seen: Tangent): AcceptedStroke | NoStrokeReason {
  return detect({
    propose: () => strongestArc(context, seen),
    refine: (arc) => refineArc(context, seen, arc) ?? reason('stroke.unsettled'),
    accept({ traced }) {
      const inflation = acceptTraced(context, traced, DEMANDS)
      return isReason(inflation) ? inflation : { traced, inflation }
    },
    nothing: reason('stroke.unsettled'),
  })
}

/** One, or none when none is strong enough. */
function strongestArc(context: SearchContext, seen: Tangent): Arc[] {
  const arcs = RADII.flatMap((radius) =>
    ([1, -1] as const).flatMap((way) => arcAlong(context, seen, radius, way) ?? []),
  )
  const strength = Math.max(LEAST_STRENGTH, ...arcs.map(({ ridge }) => ridge.strength))
  return arcs.filter(({ ridge }) => ridge.strength === strength).slice(0, 1)
}

/** The arc of a radius that touches a direction at a place, this far across from it; the place is its middle. */
function curveAt(
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

function arcAlong(
  { grey, noise, ink }: SearchContext,
  seen: Tangent,
  radius: number,
  way: 1 | -1,
): Arc | null {
  const curve = curveAt(seen, radius, way, 0)
  const half = reachAcross(ASIDE, WIDEST_BENT)
  const high = Math.min(half, radius - 1)
  const strip = stripAlong(grey, curve, piecesFor(curve.length, PIECE), -half, high)
  const grid = barGrid(strip, -half, high, Math.min(WIDEST_BENT, 1.2 * radius))
  const places = new Float64Array(grid.pieces)
  let ridge: Ridge | null = null
  for (let across = -ASIDE; across <= ASIDE; across += 0.5) {
    const here: Ridge | null = scoreRidge(
      { grid, length: curve.length, noise, ink },
      [across],
      places.fill(across),
      ridge?.strength,
    )
    ridge = here ?? ridge
  }
  return ridge && { strip, grid, ridge, radius, way }
}

function refineArc({ grey }: SearchContext, seen: Tangent, { strip, grid, ridge, radius, way }: Arc) {
  const across = ridge.steer[0] ?? 0
  const onto = curveAt(seen, radius, way, across)
  return traceRidge(grey, { strip, grid, ridge, way: () => ({ offset: across, turn: 0 }), onto })
}
