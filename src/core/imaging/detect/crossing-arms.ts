import { type Pixel, pixel } from '../../geometry/frames.ts'
import type { AcceptedStroke } from '../accept/acceptance.ts'
import { orientedFilter } from '../filter/oriented-filter.ts'
import { mapReach, type PieceMap, pieceMap } from '../filter/piece-map.ts'
import { type Path, parallelPaths } from '../filter/ridge-score.ts'
import { straightCurve } from '../strip/reference-curve.ts'
import { piecesFor, stripAlong } from '../strip/strip.ts'
import type { GreyWindow } from '../window/grey-window.ts'
import { settleLine } from './line-detector.ts'

/** Arms are looked for from this far to this far from the place, pixels. */
const ARM_FROM = 7
export const ARM_TO = 39
const ARMS = 48
export const PIECE = 4
const WIDEST_ARM = 19
const STRONG = 5.5
const MOST_ARMS = 7
/** A straight stroke, or half of one, near the place: a line, and from where to where it was seen along it. */
export interface Arm {
  /** Foot of the place on its centreline. */
  foot: Pixel
  /** Radians; the stroke is told along it from the place. */
  direction: number
  from: number
  to: number
  width: number
  contrast: number
  strength: number
}

export const unit = (direction: number): Pixel => pixel(Math.cos(direction), Math.sin(direction))

/** Straight ways that start near a place and look like strokes, each settled by a fit. */
export function armsAt(grey: GreyWindow, at: Pixel, reach: number, noise: number): Arm[] {
  const half = mapReach(reach, WIDEST_ARM)
  const length = ARM_TO - ARM_FROM
  const count = length / PIECE
  const most = Math.ceil(reach + 4)
  const strengths = new Float64Array(2 * most + 1)
  let map: PieceMap | undefined
  const seen: { direction: number; offset: number; path: Path }[] = []
  for (let i = 0; i < ARMS; i++) {
    const direction = (2 * Math.PI * i) / ARMS
    map = orientedFilter(grey, at, direction, ARM_FROM, count, PIECE, half, WIDEST_ARM, most, map)
    for (const path of parallelPaths(map, most, length, noise, strengths)) {
      if (path !== null && path.strength > STRONG) seen.push({ direction, offset: path.steer[0] ?? 0, path })
    }
  }
  seen.sort((a, b) => b.path.strength - a.path.strength)
  const apart: typeof seen = []
  for (const arm of seen) {
    if (apart.length >= MOST_ARMS) break
    const away = apart.every((a) => {
      const turn = Math.abs(
        Math.atan2(Math.sin(a.direction - arm.direction), Math.cos(a.direction - arm.direction)),
      )
      return turn > 0.3 || (Math.abs(a.offset - arm.offset) > a.path.width / 2 + 5 && turn < 0.15)
    })
    if (away) apart.push(arm)
  }
  const strongest = Math.abs(apart[0]?.path.contrast ?? 0)
  return apart
    .filter((a) => Math.abs(a.path.contrast) > 0.25 * strongest)
    .flatMap((a) => settledArm(grey, at, a, noise))
}

/** An arm with its place and direction settled by a fit. */
function settledArm(
  grey: GreyWindow,
  at: Pixel,
  { direction, offset, path }: { direction: number; offset: number; path: Path },
  noise: number,
): Arm[] {
  const [dx, dy] = unit(direction)
  const place = (along: number): Pixel =>
    pixel(at[0] + along * dx - offset * dy, at[1] + along * dy + offset * dx)
  const settled = settleAlong(grey, place(ARM_FROM), place(ARM_TO), path, noise, [], 12)
  if (typeof settled === 'string') return []
  const { strip, fit } = settled.traced
  const start = strip.curve.place(0, fit.parameters[0] ?? 0)
  const end = strip.curve.place(strip.curve.length, fit.parameters[1] ?? 0)
  const turned = Math.atan2(end[1] - start[1], end[0] - start[0])
  const [ux, uy] = unit(turned)
  const along = (at[0] - start[0]) * ux + (at[1] - start[1]) * uy
  const foot: Pixel = pixel(start[0] + along * ux, start[1] + along * uy)
  const { width, contrast } = fit
  return [{ foot, direction: turned, from: ARM_FROM, to: ARM_TO, width, contrast, strength: path.strength }]
}

/** Traces the straight stroke that runs from near one place to near another and looks like this. */
export function settleAlong(
  grey: GreyWindow,
  from: Pixel,
  to: Pixel,
  { width, contrast }: Pick<Path, 'width' | 'contrast'>,
  noise: number,
  barred: readonly (string | undefined)[],
  least: number,
): AcceptedStroke | string {
  const curve = straightCurve(from, to)
  const half = mapReach(3, Math.min(1.5 * width + 2, 40))
  const strip = stripAlong(grey, curve, piecesFor(curve.length, PIECE), -half, half)
  const map = pieceMap(strip, -half, half, 1.5 * width + 1)
  barred.forEach((why, k) => {
    if (why !== undefined) map.there[k] = false
  })
  const rough: Path = { steer: [0, 0], width, contrast, strength: 0 }
  return settleLine(grey, strip, map, rough, half, { share: 0.3, length: least }, noise, barred)
}
