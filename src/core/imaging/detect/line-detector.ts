import type { Pixel } from '../../geometry/frames.ts'
import { type AcceptedStroke, acceptStroke, BY_HAND } from '../accept/acceptance.ts'
import { isTexture } from '../accept/texture.ts'
import { barAt, mapReach, type PieceMap, pieceMap } from '../filter/piece-map.ts'
import { climbPath, distinct, type Path, tryPath } from '../filter/ridge-score.ts'
import type { NoStroke, SearchOptions } from '../result/stroke-types.ts'
import { alignedProfile } from '../strip/aligned-profile.ts'
import { straightCurve } from '../strip/reference-curve.ts'
import { piecesFor, type Strip, stripAlong } from '../strip/strip.ts'
import { traceStroke } from '../trace/trace-stroke.ts'
import type { GreyWindow } from '../window/grey-window.ts'
import { REACH } from '../window/search-window.ts'
import { windowNoise } from '../window/window-noise.ts'

/** Strokes up to this wide are looked for, pixels. */
export const WIDEST = 40
const SHORTEST_PIECE = 4
const SHORTEST_LINE = 8
/** Weaker than this over all of its length it is not even tried. */
const STRONG = 5

/** Looks for the straight stroke and traces it: the nearest that is one. */
export function detectLine(
  grey: GreyWindow,
  from: Pixel,
  to: Pixel,
  options: SearchOptions,
): AcceptedStroke | NoStroke {
  const reach = options.reach ?? REACH
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  if (!(length >= SHORTEST_LINE)) {
    return {
      kind: 'none',
      because: `The two picks are less than ${SHORTEST_LINE} px apart. Pick them farther apart.`,
    }
  }
  const curve = straightCurve(from, to)
  const half = mapReach(reach, WIDEST)
  const strip = stripAlong(grey, curve, piecesFor(length, SHORTEST_PIECE), -half, half)
  const map = pieceMap(strip, -half, half, WIDEST)
  const noise = windowNoise(grey)
  const paths = linePaths(map, strip, reach, length, noise)
  let because = `No stroke was seen along this way. ${BY_HAND}`
  for (const path of nearestFirst(paths, reach)) {
    const settled = settleLine(
      grey,
      strip,
      map,
      path,
      half,
      { share: 0.4, length: Math.min(12, 0.5 * length) },
      noise,
    )
    if (typeof settled !== 'string') return settled
    because = settled
  }
  return { kind: 'none', because }
}

/** Where a straight way lies in each piece, steered by its offsets at the two ends. */
const straightAcross =
  (strip: Strip) =>
  (steer: readonly number[], out: Float64Array): void => {
    const [a, b] = steer as [number, number]
    strip.pieces.forEach((p, k) => {
      out[k] = a + ((b - a) * p.middle) / strip.curve.length
    })
  }

function linePaths(map: PieceMap, strip: Strip, reach: number, length: number, noise: number): Path[] {
  const across = straightAcross(strip)
  const places = new Float64Array(map.pieces)
  const paths: Path[] = []
  const attempt = (a: number, b: number) => {
    across([a, b], places)
    const path = tryPath(map, [a, b], places, length, noise)
    if (path !== null && path.strength > STRONG) paths.push(path)
  }
  for (let a = -reach; a <= reach; a++) for (let b = -reach; b <= reach; b++) attempt(a, b)
  for (let a = reach + 2; a < reach + WIDEST / 2; a += 2) {
    attempt(a, a)
    attempt(-a, -a)
  }
  return paths
}

/** How far a way is from where it is looked for: nothing when that lies inside the stroke. */
export const distanceOf = (path: Path): number =>
  Math.max(0, path.steer.reduce((s, o) => s + Math.abs(o), 0) / path.steer.length - path.width / 2)

/** Of the ways that are apart and not much fainter than the strongest, the nearest first. */
export function nearestFirst(paths: readonly Path[], reach: number): Path[] {
  const within = paths.filter((p) => distanceOf(p) <= reach)
  const few = distinct(within, 6, (a, b) => {
    const away = a.steer.map((s, i) => Math.abs(s - (b.steer[i] ?? 0)))
    return Math.max(...away) > Math.max(a.width, b.width) / 2 + 2.5
  })
  const strongest = Math.max(0, ...few.map((p) => Math.abs(p.contrast)))
  return few
    .filter((p) => Math.abs(p.contrast) > 0.25 * strongest)
    .sort((a, b) => distanceOf(a) - distanceOf(b))
    .slice(0, 3)
}

export function settleLine(
  grey: GreyWindow,
  strip: Strip,
  map: PieceMap,
  rough: Path,
  half: number,
  demands: { share: number; length: number },
  noise: number,
  barred: readonly (string | undefined)[] = [],
): AcceptedStroke | string {
  const across = straightAcross(strip)
  const path = climbPath(map, rough, across, strip.curve.length, noise, [1, 0.25])
  if (!(path.strength > 0)) return `No stroke was seen along this way. ${BY_HAND}`
  const [a, b] = path.steer as [number, number]
  const turn = (b - a) / strip.curve.length
  const width = map.widths.indexOf(path.width)
  const places = new Float64Array(map.pieces)
  across(path.steer, places)
  const offsets = strip.pieces.map((_, k) => {
    const bar = barAt(map, width, k, places[k] as number) / path.contrast
    return bar > 0.45 && bar < 2 && !barred[k] ? { offset: places[k] as number, turn } : null
  })
  const onto = straightCurve(strip.curve.place(0, a), strip.curve.place(strip.curve.length, b))
  const seen = { curve: strip.curve, offsets, width: path.width, contrast: path.contrast, barred }
  const traced = traceStroke(grey, strip, seen, onto, Math.min(path.width / 2 + 9, half))
  if (traced === null) return `What is here does not settle to a stroke. ${BY_HAND}`
  const inflation = acceptStroke(traced, demands)
  if (typeof inflation === 'string') return inflation
  if (isTexture(alignedProfile(strip, offsets, half - Math.abs(a) - 1), traced.fit)) {
    return `The same lines repeat all over here: the texture of the ground, perhaps. ${BY_HAND}`
  }
  return { traced, inflation }
}
