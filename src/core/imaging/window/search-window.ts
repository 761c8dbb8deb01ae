import { circleThrough } from '../../geometry/circle-through.ts'
import { type Pixel, pixel } from '../../geometry/frames.ts'

/** How far a stroke may lie from where it is looked for when nothing else is said, pixels. */
export const REACH = 8

/** What is looked for. */
type Sought = 'point' | 'crossing' | 'line' | 'circle' | 'arc' | 'end'

/** Outer edges, whole pixels of the scan. */
export type WindowBox = [left: number, top: number, right: number, bottom: number]

/** The part of a scan that a search looks at. */
export interface SearchWindow {
  box: WindowBox
  /** Whether it looks at anything no farther than this from a place, pixels of the scan: beside a stroke it does not. */
  looksWithin(distance: number, of: Pixel): boolean
}

/**
 * More pixels than this are not sensible to look at: at a byte a pixel it is the memory they take. Of a line or circle only what
 * lies along it counts (`looksWithin`), so that one as long as the largest sheet needs less.
 */
export const LARGEST_WINDOW = 64e6

/** Beyond the reach: half of the widest stroke twice over, its ground, and some room, pixels. */
const BESIDE = 52
/** So much more of the strokes that cross, pixels. */
const ALONG_ARMS = 24
/** Errors of three picks that steer a circle are followed to where they are so many times as large. */
export const MOST_ENLARGED = 2.5
/** Radius of the largest round end that is looked for from one place on it, pixels. */
export const LARGEST_END = 120

const FURTHER: Partial<Record<Sought, number>> = { end: 2 * LARGEST_END, crossing: ALONG_ARMS }

/**
 * The part of the scan that a search looks at.
 * @param rough the picks: one for a point, a crossing or a round end, two for a line, three for a circle or arc, pixels of the scan
 * @param options reach, as for the search; scan: its width and height, pixels, to stay within
 */
export function searchWindow(
  rough: readonly Pixel[],
  sought: Sought,
  { reach = REACH, scan }: { reach?: number; scan?: { width: number; height: number } } = {},
): SearchWindow {
  const [a, b, c] = rough
  if ((sought === 'circle' || sought === 'arc') && a && b && c) {
    const beside = MOST_ENLARGED * reach + BESIDE
    const round = circleThrough([a, b, c])
    if (round === null) return { box: boxRound(rough, beside, scan), looksWithin: () => true }
    const { centre, radius } = round
    const [x, y] = centre
    const corners = [...rough, pixel(x - radius, y - radius), pixel(x + radius, y + radius)]
    return {
      box: boxRound(corners, beside, scan),
      looksWithin: (distance, of) => Math.abs(Math.hypot(of[0] - x, of[1] - y) - radius) <= beside + distance,
    }
  }
  const beside = reach + BESIDE + (FURTHER[sought] ?? 0)
  const box = boxRound(rough, beside, scan)
  if (sought !== 'line' || !a || !b) return { box, looksWithin: () => true }
  return { box, looksWithin: (distance, of) => fromSegment(of, a, b) <= beside + distance }
}

function boxRound(
  places: readonly Pixel[],
  beside: number,
  scan: { width: number; height: number } | undefined,
): WindowBox {
  const x = places.map((p) => p[0])
  const y = places.map((p) => p[1])
  const within = (v: number, most: number | undefined) =>
    most === undefined ? v : Math.min(Math.max(v, 0), most)
  return [
    within(Math.floor(Math.min(...x) - beside), scan?.width),
    within(Math.floor(Math.min(...y) - beside), scan?.height),
    within(Math.ceil(Math.max(...x) + beside), scan?.width),
    within(Math.ceil(Math.max(...y) + beside), scan?.height),
  ]
}

function fromSegment([x, y]: Pixel, [ax, ay]: Pixel, [bx, by]: Pixel): number {
  const [dx, dy] = [bx - ax, by - ay]
  const squared = dx * dx + dy * dy
  const along = squared === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / squared))
  return Math.hypot(x - ax - along * dx, y - ay - along * dy)
}
