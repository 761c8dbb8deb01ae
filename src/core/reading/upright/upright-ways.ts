import type { GreyPicture } from '../../imaging/index.ts'
import { withoutLongLines } from '../lines/without-long-lines.ts'
import type { InkField } from '../network/glyph-network.ts'
import { inkOf } from '../patch/ink-of.ts'
import { sampleUpright, type TurnedBox } from '../patch/sample-upright.ts'
import { placeOnPage } from '../patch/upright-places.ts'
import { digitHeights } from './digit-heights.ts'
import { type InkPlaces, rowsShow } from './direction-profile.ts'
import { type InkPart, labelInk } from './label-ink.ts'

/** One way in which the lettering in a box may run. */
export interface UprightWay {
  /** Round the lettering, with a margin, turned as it is read. */
  readonly box: TurnedBox
  /** What height a full digit may have, pixels of the page, the likeliest first: one to three. */
  readonly digitHeights: readonly number[]
  /** Probability among the ways that are given, which add up to 1. */
  readonly weight: number
}

/** A box on a page, pixels. */
export interface PageBox {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** The box is looked at so many pixels high or wide, whichever is less, and no wider or higher than so many. */
const [SHORT_SIDE, LONG_SIDE, LARGEST_SCALE] = [80, 360, 2]
/** Ink from here on is a stroke. */
const STROKE = 0.4
/** Parts of less than so many pixels are specks. */
const SPECK = 8
/** Directions are tried so far apart, and then finer round the best, degrees. */
const [COARSE, FINE, FINE_REACH] = [3, 0.5, 3]
/** Lettering that is meant to be level or upright is so to this many degrees; from so many on it is at an odd angle. */
const [NEARLY, ODD] = [5, 9]
/** How many odd angles are looked at beside those. */
const ODD_ONES = 2
/** How much more rows must show for lettering to lean by a degree, growing with its square. */
const LEANS = 0.012
const MOST_WAYS = 4
/** Lettering stands level or upright far more often than at an odd angle; so many times as often. Common practice, no source. */
const STRAIGHT = 3
/** How much a difference in how rows show tells. */
const TELLS = 2.5
/** Drawings are read from the bottom or from the right; from the left this often as from the right. Common practice, no source. */
const FROM_THE_LEFT = 0.2
const MARGIN = 0.45

/**
 * How the lettering may run in a box that was drawn roughly round it, whichever way it is turned.
 * @returns one to four ways, the likeliest first; none where there is no ink in the box
 */
export function uprightWays(picture: GreyPicture, box: PageBox): UprightWay[] {
  const [short, long] = [Math.min(box.width, box.height), Math.max(box.width, box.height)]
  if (short <= 0) return []
  const scale = Math.min(LARGEST_SCALE, SHORT_SIDE / short, LONG_SIDE / long)
  const level: TurnedBox = {
    centre: [box.x + box.width / 2, box.y + box.height / 2],
    width: box.width,
    height: box.height,
    angle: 0,
  }
  const parts = letteringIn(inkOf(sampleUpright(picture, level, scale)), short * scale)
  if (parts.length === 0) return []
  const width = Math.max(1, Math.round(box.width * scale))
  const places = placesOf(parts, width)
  const directions = likelyDirections(places)
  const whole = directions.reduce((sum, { weight }) => sum + weight, 0)
  const ways = directions.map(({ angle, weight }): UprightWay => {
    const around = boxRound(parts, width, angle)
    const heights = digitHeights(parts, width, angle)
    const high = heights[0] ?? 1
    return {
      box: {
        centre: placeOnPage(level, scale, around.centre),
        width: (around.width + 2 * MARGIN * high) / scale,
        height: (around.height + 2 * MARGIN * high) / scale,
        angle,
      },
      digitHeights: heights.map((one) => one / scale),
      weight: weight / whole,
    }
  })
  return withTurned(ways)
}

/** The likeliest first; level and upright are among them, and what is read from the right could also be read from the left. */
function withTurned(ways: readonly UprightWay[]): UprightWay[] {
  const steep = [...ways].sort((a, b) => steepness(b) - steepness(a))[0]
  if (steep === undefined) return []
  const isStraight = ({ box: { angle } }: UprightWay): boolean =>
    Math.min(between(angle, 0), between(angle, 90)) <= NEARLY
  const straight = ways.filter(isStraight)
  const others = [...ways.filter((way) => !isStraight(way)), fromTheOtherSide(steep)].sort(byWeight)
  const all = [...straight, ...others].slice(0, MOST_WAYS).sort(byWeight)
  const whole = all.reduce((sum, { weight }) => sum + weight, 0)
  return all.map((way) => ({ ...way, weight: way.weight / whole }))
}

const byWeight = (a: UprightWay, b: UprightWay): number => b.weight - a.weight

/** The same lettering read upside down: as from the left what is read from the right. */
export function fromTheOtherSide(way: UprightWay): UprightWay {
  const { angle } = way.box
  const turned = { ...way.box, angle: angle > 0 ? angle - 180 : angle + 180 }
  return { ...way, box: turned, weight: FROM_THE_LEFT * way.weight }
}

const steepness = ({ box: { angle } }: UprightWay): number => Math.abs(Math.sin((angle * Math.PI) / 180))

/** Ink that may be lettering: without long lines and specks; with the lines where hardly anything is left without. */
function letteringIn(field: InkField, short: number): InkPart[] {
  const all = labelInk(field, STROKE).filter(({ places }) => places.length >= SPECK)
  const { field: cleaned } = withoutLongLines(field, {
    least: 1.1 * short,
    leastAtEdge: 0.8 * short,
    thickest: Math.max(4, 0.1 * short),
  })
  const kept = labelInk(cleaned, STROKE).filter(({ places }) => places.length >= SPECK)
  const inkIn = (parts: readonly InkPart[]): number =>
    parts.reduce((sum, { places }) => sum + places.length, 0)
  return inkIn(kept) > 0.2 * inkIn(all) ? withoutScraps(kept) : all
}

/** What is left of lines where they were taken out is thin and small beside the glyphs. */
function withoutScraps(parts: readonly InkPart[]): InkPart[] {
  const most = Math.max(...parts.map(({ places }) => places.length))
  return parts.filter(({ places }) => places.length > 0.06 * most)
}

function placesOf(parts: readonly InkPart[], width: number): InkPlaces {
  const all = parts.flatMap(({ places }) => places)
  return {
    x: Float32Array.from(all, (at) => at % width),
    y: Float32Array.from(all, (at) => Math.floor(at / width)),
    ink: new Float32Array(all.length).fill(1),
  }
}

/** Level, upright and the likeliest at an odd angle, turned so that they are read from the bottom or the right. */
function likelyDirections(places: InkPlaces): { angle: number; weight: number }[] {
  const tried = Array.from({ length: 180 / COARSE }, (_, i) => -90 + i * COARSE)
    .map((angle) => ({ angle, shows: rowsShow(places, angle) }))
    .sort((a, b) => b.shows - a.shows)
  const chosen: { angle: number; weight: number }[] = []
  const apart = (angle: number): number => Math.min(...chosen.map((one) => between(one.angle, angle)))
  const take = (belongs: (angle: number) => boolean, often: number): void => {
    for (const one of tried) {
      if (!belongs(one.angle)) continue
      const { angle, shows } = refined(places, one.angle)
      // What the finer search brings back to one that is taken is none of its own.
      if (apart(angle) < ODD - FINE_REACH) continue
      chosen.push({ angle: upright(angle), weight: often * Math.exp(TELLS * shows) })
      return
    }
  }
  take((angle) => between(angle, 0) <= NEARLY, STRAIGHT)
  take((angle) => between(angle, 90) <= NEARLY, STRAIGHT)
  for (let n = 0; n < ODD_ONES; n++) take((angle) => apart(angle) >= ODD, 1)
  return chosen
}

/** Degrees between two directions, which are the same when turned by 180. */
function between(a: number, b: number): number {
  const turn = (((a - b) % 180) + 180) % 180
  return Math.min(turn, 180 - turn)
}

/** The direction near another in which rows show most; of nearly level and upright ones rather those that are so. */
function refined(places: InkPlaces, angle: number): { angle: number; shows: number } {
  let best = { angle, shows: Number.NEGATIVE_INFINITY, rated: Number.NEGATIVE_INFINITY }
  for (let turn = -FINE_REACH; turn <= FINE_REACH; turn += FINE) {
    const shows = rowsShow(places, angle + turn)
    const off = Math.min(between(angle + turn, 0), between(angle + turn, 90), NEARLY)
    const rated = shows - LEANS * off ** 2
    if (rated > best.rated) best = { angle: angle + turn, shows, rated }
  }
  return best
}

/** From read from the right, leaning a little over, to nearly read from the left: −97 to 83. */
const upright = (angle: number): number => ((((angle + 97) % 180) + 180) % 180) - 97

/** The rectangle round the ink, turned. Pixels of the field. */
function boxRound(parts: readonly InkPart[], fieldWidth: number, angle: number) {
  const turn = (angle * Math.PI) / 180
  const [c, s] = [Math.cos(turn), Math.sin(turn)]
  let [u0, u1, v0, v1] = [Infinity, -Infinity, Infinity, -Infinity]
  for (const { places } of parts)
    for (const at of places) {
      const [x, y] = [(at % fieldWidth) + 0.5, Math.floor(at / fieldWidth) + 0.5]
      const [u, v] = [x * c + y * s, y * c - x * s]
      u0 = Math.min(u0, u)
      u1 = Math.max(u1, u)
      v0 = Math.min(v0, v)
      v1 = Math.max(v1, v)
    }
  const [u, v] = [(u0 + u1) / 2, (v0 + v1) / 2]
  return { centre: [u * c - v * s, u * s + v * c] as const, width: u1 - u0 + 1, height: v1 - v0 + 1 }
}
