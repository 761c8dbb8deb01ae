import { algebraicCircle } from '../../geometry/algebraic-circle.ts'
import type { ThreePoints } from '../../geometry/circle-through.ts'
import { type Pixel, pixel } from '../../geometry/frames.ts'
import * as elements from '../../linear-algebra/elements-unchecked.ts'
import { median } from '../../uncertainty/median.ts'
import { reason } from '../../words/core-words.ts'
import type { NoStrokeReason } from '../../words/strokes.ts'
import { DIRECTIONS, type StrokeMap, strokeMap } from '../filter/stroke-map.ts'
import type { GreyWindow } from '../window/grey-window.ts'
import { LARGEST_END } from '../window/search-window.ts'
import type { SearchContext } from './detector.ts'

const { f64 } = elements

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
/** Of so many places about the nearest one at least so many are on a stroke, before the rest is looked at. */
const NEAR = 9
const FEWEST_NEAR = 6
/** Contrast below so many times the noise of a pixel is none: places are means of 27 pixels. */
const FAINT = 1.5
/** Along a ray the stroke is looked for so far to both sides of where it was guessed, pixels; in small ends less. */
const BEYOND = 5
const FEWEST_RAYS = 8
/** A circle that settles farther off than this is of something else, pixels. */
const SETTLES_WITHIN = 10
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
 * @param grey what the context looks at, in one piece
 * @param at pixels of the scan, within the reach of the end's stroke
 * @throws never; a reason says why there is none
 */
export function roundEndAt(
  context: SearchContext,
  grey: GreyWindow,
  at: Pixel,
): ThreePoints | NoStrokeReason {
  const { noise, reach, ink, usualInk } = context
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
  const near = new NearPlaces()
  for (let radius = SMALLEST; radius <= LARGEST_END; radius += STEP) {
    const around = Math.max(16, Math.ceil((2 * Math.PI * radius) / STEP))
    for (let k = 0; k < around; k++) {
      const way = (2 * Math.PI * k) / around
      near.turnTo(way, radius)
      for (let aside = -reach; aside <= reach; aside += STEP) {
        const far = radius + aside
        if (far <= 0) continue
        const [mx, my] = [x - far * Math.cos(way), y - far * Math.sin(way)]
        if (!near.areOn(map, mx, my)) continue
        const end = runAt(map, { x: mx, y: my, radius }, way, aside)
        if (end !== null && (best === null || end.score > best.score)) best = end
      }
    }
  }
  return best
}

/** The places of a circle nearest to where it was pointed at: worked out once for all middles in one direction. */
class NearPlaces {
  readonly #x = new Float64Array(NEAR)
  readonly #y = new Float64Array(NEAR)
  readonly #across = new Float64Array(NEAR)

  turnTo(way: number, radius: number): void {
    for (let i = 0; i < NEAR; i++) {
      const angle = way + (i - (NEAR - 1) / 2) * TURN
      this.#x[i] = radius * Math.cos(angle)
      this.#y[i] = radius * Math.sin(angle)
      this.#across[i] = acrossOf(angle)
    }
  }

  /** Whether enough of them are on a stroke. */
  areOn({ left, top, width, height, bits }: StrokeMap, x: number, y: number): boolean {
    let off = 0
    for (let i = 0; i < NEAR && off <= NEAR - FEWEST_NEAR; i++) {
      const u = Math.floor(x + f64(this.#x, i) - left)
      const v = Math.floor(y + f64(this.#y, i) - top)
      const isThere = u >= 0 && v >= 0 && u < width && v < height
      if (!isThere || (((bits[v * width + u] ?? 0) >> f64(this.#across, i)) & 1) === 0) off++
    }
    return off <= NEAR - FEWEST_NEAR
  }
}

/** How far round a circle runs on a stroke, from the direction of the place both ways; null where that is no round end. */
function runAt(map: StrokeMap, of: Middle, way: number, aside: number): End | null {
  const { run, hits, middle } = runFrom(way, (angle) => isOn(map, of, angle))
  if (run < LEAST_RUN || hits < SHARE * run) return null
  if (isFilled(map, of)) return null
  const top = run >= WHOLE_RUN ? way : middle
  const seen = Math.min(run, FULL_RUN) * (hits / run)
  const drawn = drawnOf(map, of, top)
  return { ...of, top, score: seen + drawn - ASIDE * Math.abs(aside) + Math.log(of.radius) }
}

/** How many of the places round the top are on their stroke itself and not beside it. */
function drawnOf(map: StrokeMap, of: Middle, top: number): number {
  let drawn = 0
  for (let angle = top - OUTER; angle <= top + OUTER; angle += TURN)
    if (strengthAt(map, of, angle) > 0) drawn++
  return drawn
}

/** How far a place on a circle stands out of its ground; 0 where it is on no stroke. */
function strengthAt(
  { left, top, width, height, strength }: StrokeMap,
  { x, y, radius }: Middle,
  angle: number,
): number {
  const u = Math.floor(x + radius * Math.cos(angle) - left)
  const v = Math.floor(y + radius * Math.sin(angle) - top)
  return u < 0 || v < 0 || u >= width || v >= height ? 0 : (strength[v * width + u] ?? 0)
}

/** Whether what is inside is on strokes itself, as where two of them cross: a centre line alone is not so much of it. */
function isFilled(map: StrokeMap, { x, y, radius }: Middle): boolean {
  const inner = { x, y, radius: radius / 2 }
  let on = 0
  for (let i = 0; i < INSIDE; i++) if (strengthAt(map, inner, (2 * Math.PI * i) / INSIDE) > 0) on++
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
function asDrawn(map: StrokeMap, end: End): End | null {
  const { run, middle } = runFrom(end.top, (angle) => strengthAt(map, end, angle) > 0)
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
  return (((bits[v * width + u] ?? 0) >> acrossOf(angle)) & 1) === 1
}

/** Which of the directions across strokes is the nearest to that of a radius. */
function acrossOf(angle: number): number {
  const turned = Math.round((angle * DIRECTIONS) / Math.PI) % DIRECTIONS
  return turned < 0 ? turned + DIRECTIONS : turned
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
function placesOn(map: StrokeMap, end: End): Pixel[] {
  const beyond = Math.min(BEYOND, end.radius / 3)
  const found: { place: Pixel; out: number }[] = []
  for (let angle = end.top - OUTER; angle <= end.top + OUTER; angle += TURN / 2) {
    const [dx, dy] = [Math.cos(angle), Math.sin(angle)]
    let [sum, moment] = [0, 0]
    for (let out = -beyond; out <= beyond; out += 0.5) {
      const here = strengthAt(map, { ...end, radius: end.radius + out }, angle)
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
