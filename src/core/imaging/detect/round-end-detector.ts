import { algebraicCircle } from '../../geometry/algebraic-circle.ts'
import type { ThreePoints } from '../../geometry/circle-through.ts'
import { type Pixel, pixel } from '../../geometry/frames.ts'
import { reason } from '../../words/core-words.ts'
import type { NoStrokeReason } from '../../words/strokes.ts'
import { DIRECTIONS, type StrokeMap, strokeMap } from '../filter/stroke-map.ts'
import { LARGEST_END } from '../window/search-window.ts'
import type { SearchContext } from './detector.ts'

/** Radius of the smallest end that is looked for, pixels. */
const SMALLEST = 5
/** Radii, places round and places aside that are tried lie so far apart, pixels: what is tried is on its stroke up to 1 px off. */
const STEP = 2
/** Places looked at round a whole circle. */
const ROUND = 48
const TURN = (2 * Math.PI) / ROUND
/** So much of a circle is a round end, and no rounded corner: of the half that it is, all but 15° at each side. */
const LEAST_RUN = 20
/** As much as a half and a little of the straight sides; more of it makes nothing surer. */
const FULL_RUN = 26
/** A whole circle, but for what is broken of it. */
const WHOLE_RUN = 40
/** So many places in a row may be crossed by something, or broken. */
const GAP = 2
/** The share of the places that must be on the stroke. */
const SHARE = 0.85
/** Places looked at inside. */
const INSIDE = 16
/** Of ends as well seen the nearer one is taken, so much for each pixel, and the larger: in a crossing many small ones fit. */
const ASIDE = 0.25
/** Of the four places to each side of the nearest one at least so many with it, before the rest is looked at. */
const FEWEST_NEAR = 6
/** Contrast below so many times the noise of a pixel is none: places are means of 27 pixels. */
const FAINT = 1.5
/** Along a ray the stroke is looked for so far to both sides of where it was guessed, pixels. */
const BEYOND = 5
const FEWEST_RAYS = 8
/** A circle that settles farther off than this is of something else, pixels. */
const SETTLES_WITHIN = 6
/** A straight side is seen to leave the circle where it lies so far from it, pixels. */
const LEAVES = 1.5
/** From the top of an end to its outer picks: as far as surely belongs to the round, radians. */
const OUTER = (72 * Math.PI) / 180

interface Middle {
  x: number
  y: number
  radius: number
}

interface End extends Middle {
  /** From the middle to its top, radians. */
  top: number
  /** Of what is tried the most is taken. */
  score: number
}

/**
 * Where a round end, half a circle at the end of two straight sides, lies near one place: three places on it, good enough to
 * look for its arc from there. A whole circle is taken as well, and no rounded corner.
 * @param at pixels of the scan, within the reach of the end's stroke
 * @throws never; a reason says why there is none
 */
export function roundEndAt(context: SearchContext, at: Pixel): ThreePoints | NoStrokeReason {
  const { grey, noise, reach, ink, usualInk } = context
  const map = strokeMap(grey, ink ?? usualInk, { at, within: reach, least: FAINT * noise })
  if (map === null) return reason('stroke.none-within', { reach })
  const rough = roughEnd(map, at, reach)
  if (rough === null) return reason('stroke.no-round-end')
  const end = asDrawn(map, settled(map, rough))
  if (end === null) return reason('stroke.no-round-end')
  const { x, y, radius, top } = end
  const on = (angle: number): Pixel => pixel(x + radius * Math.cos(angle), y + radius * Math.sin(angle))
  return [on(top - OUTER), on(top), on(top + OUTER)]
}

/** Tries middles in every direction from the place, as far as an end may be large. */
function roughEnd(map: StrokeMap, [x, y]: Pixel, reach: number): End | null {
  let best: End | null = null
  for (let radius = SMALLEST; radius <= LARGEST_END; radius += STEP) {
    const around = Math.max(16, Math.ceil((2 * Math.PI * radius) / STEP))
    for (let k = 0; k < around; k++) {
      const way = (2 * Math.PI * k) / around
      for (let aside = -reach; aside <= reach; aside += STEP) {
        const far = radius + aside
        if (far <= 0) continue
        const middle = { x: x - far * Math.cos(way), y: y - far * Math.sin(way), radius }
        const end = runAt(map, middle, way, aside)
        if (end !== null && (best === null || end.score > best.score)) best = end
      }
    }
  }
  return best
}

/** How far round a circle runs on a stroke, from the direction of the place both ways; null where that is no round end. */
function runAt(map: StrokeMap, of: Middle, way: number, aside: number): End | null {
  let near = 0
  for (let i = -4; i <= 4; i++) if (isOn(map, of, way + i * TURN)) near++
  if (near < FEWEST_NEAR) return null
  const { run, hits, middle } = runFrom(way, (angle) => isOn(map, of, angle))
  if (run < LEAST_RUN || hits < SHARE * run) return null
  if (isFilled(map, of)) return null
  const top = run >= WHOLE_RUN ? way : middle
  const seen = Math.min(run, FULL_RUN) * (hits / run)
  return { ...of, top, score: seen - ASIDE * Math.abs(aside) + Math.log(of.radius) }
}

/** Whether what is inside is on strokes itself, as where two of them cross: a centre line alone is not so much of it. */
function isFilled({ left, top, width, height, strength }: StrokeMap, { x, y, radius }: Middle): boolean {
  let on = 0
  for (let i = 0; i < INSIDE; i++) {
    const u = Math.floor(x + (radius / 2) * Math.cos((2 * Math.PI * i) / INSIDE) - left)
    const v = Math.floor(y + (radius / 2) * Math.sin((2 * Math.PI * i) / INSIDE) - top)
    if (u >= 0 && v >= 0 && u < width && v < height && (strength[v * width + u] ?? 0) > 0) on++
  }
  return on > INSIDE / 3
}

/** So many places in a row, where they are on something, and where their middle is, radians. */
function runFrom(
  from: number,
  isThere: (angle: number) => boolean,
): { run: number; hits: number; middle: number } {
  let hits = 1
  const follow = (sense: 1 | -1, most: number): number => {
    let to = 0
    for (let i = 1; i <= most && i - to <= GAP + 1; i++) {
      if (!isThere(from + sense * i * TURN)) continue
      to = i
      hits++
    }
    return to
  }
  const onward = follow(1, ROUND - 1)
  const back = follow(-1, ROUND - 1 - onward)
  return { run: onward + back + 1, hits, middle: from + ((onward - back) / 2) * TURN }
}

/**
 * An end that has settled, with its top where its stroke says; null for what is rather a rounded corner. Straight sides leave
 * the circle slowly, and longer before they are seen to the smaller it is: a corner is a quarter of it and this at both sides.
 */
function asDrawn({ left, top, width, height, strength }: StrokeMap, end: End): End | null {
  const isDrawn = (angle: number): boolean => {
    const u = Math.floor(end.x + end.radius * Math.cos(angle) - left)
    const v = Math.floor(end.y + end.radius * Math.sin(angle) - top)
    return u >= 0 && v >= 0 && u < width && v < height && (strength[v * width + u] ?? 0) > 0
  }
  const { run, middle } = runFrom(end.top, isDrawn)
  const beside = Math.sqrt((2 * LEAVES) / end.radius)
  if (run * TURN < (3 / 4) * Math.PI + 2 * beside) return null
  return run >= WHOLE_RUN ? end : { ...end, top: middle }
}

function isOn(
  { left, top, width, height, bits }: StrokeMap,
  { x, y, radius }: Middle,
  angle: number,
): boolean {
  const u = Math.floor(x + radius * Math.cos(angle) - left)
  const v = Math.floor(y + radius * Math.sin(angle) - top)
  if (u < 0 || v < 0 || u >= width || v >= height) return false
  const turned = Math.round((angle * DIRECTIONS) / Math.PI) % DIRECTIONS
  const across = turned < 0 ? turned + DIRECTIONS : turned
  return (((bits[v * width + u] ?? 0) >> across) & 1) === 1
}

/** The circle through where the stroke stands out along rays from the middle, twice over. */
function settled(map: StrokeMap, rough: End): End {
  let end = rough
  for (let round = 0; round < 2; round++) {
    const places = placesOn(map, end)
    if (places.length < FEWEST_RAYS) return end
    const { centre, radius } = algebraicCircle(places)
    const moved = Math.hypot(centre[0] - rough.x, centre[1] - rough.y)
    if (Math.max(moved, Math.abs(radius - rough.radius)) > SETTLES_WITHIN) return end
    end = { ...end, x: centre[0], y: centre[1], radius }
  }
  return end
}

/** Where the stroke lies along each ray: the middle of what stands out there, but for rays that lie aside of the rest. */
function placesOn({ left, top, width, height, strength }: StrokeMap, end: End): Pixel[] {
  const found: { place: Pixel; out: number }[] = []
  for (let angle = end.top - OUTER; angle <= end.top + OUTER; angle += TURN / 2) {
    const [dx, dy] = [Math.cos(angle), Math.sin(angle)]
    let [sum, moment] = [0, 0]
    for (let out = -BEYOND; out <= BEYOND; out += 0.5) {
      const u = Math.floor(end.x + (end.radius + out) * dx - left)
      const v = Math.floor(end.y + (end.radius + out) * dy - top)
      const here = u < 0 || v < 0 || u >= width || v >= height ? 0 : (strength[v * width + u] ?? 0)
      sum += here
      moment += here * out
    }
    if (sum === 0) continue
    const out = moment / sum
    found.push({ place: pixel(end.x + (end.radius + out) * dx, end.y + (end.radius + out) * dy), out })
  }
  const middle = median(found.map(({ out }) => out))
  const spread = median(found.map(({ out }) => Math.abs(out - middle)))
  return found.filter(({ out }) => Math.abs(out - middle) <= 1 + 3 * spread).map(({ place }) => place)
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted[Math.floor(sorted.length / 2)] ?? 0
}
