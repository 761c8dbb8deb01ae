import { circleThrough } from '../../geometry/circle-through.ts'
import { type Pixel, pixel } from '../../geometry/frames.ts'

/** How far a stroke may lie from where it is looked for when nothing else is said, pixels. */
export const REACH = 8

/** What is looked for. */
type Sought = 'point' | 'crossing' | 'line' | 'circle' | 'arc'

/** Outer edges, whole pixels of the scan. */
export type WindowBox = [left: number, top: number, right: number, bottom: number]

/**
 * Windows of more pixels than this are not sensible: at a byte a pixel it is the memory they take. A line or circle that
 * needs more is better picked in parts.
 */
export const LARGEST_WINDOW = 64e6

/** Beyond the reach: half of the widest stroke twice over, its ground, and some room, pixels. */
const BESIDE = 52
/** The reach counts so many times where three picks steer a circle. */
const ENLARGED = 2.5

/**
 * The part of the scan that a search looks at.
 * @param rough the picks: one for a point or crossing, two for a line, three for a circle or arc, pixels of the scan
 * @param options reach, as for the search; scan: its width and height, pixels, to stay within
 */
export function windowFor(
  rough: readonly Pixel[],
  sought: Sought,
  options: { reach?: number; scan?: { width: number; height: number } } = {},
): WindowBox {
  const reach = options.reach ?? REACH
  const corners = [...rough]
  const [a, b, c] = rough
  let beside = reach + BESIDE
  if ((sought === 'circle' || sought === 'arc') && a && b && c) {
    beside = ENLARGED * reach + BESIDE
    const round = circleThrough([a, b, c])
    if (round !== null) {
      const { centre, radius } = round
      corners.push(
        pixel(centre[0] - radius, centre[1] - radius),
        pixel(centre[0] + radius, centre[1] + radius),
      )
    }
  }
  const x = corners.map((p) => p[0])
  const y = corners.map((p) => p[1])
  const { width, height } = options.scan ?? {
    width: Number.POSITIVE_INFINITY,
    height: Number.POSITIVE_INFINITY,
  }
  const lowest = options.scan ? 0 : Number.NEGATIVE_INFINITY
  const within = (v: number, high: number) => Math.min(Math.max(v, lowest), high)
  return [
    within(Math.floor(Math.min(...x) - beside), width),
    within(Math.floor(Math.min(...y) - beside), height),
    within(Math.ceil(Math.max(...x) + beside), width),
    within(Math.ceil(Math.max(...y) + beside), height),
  ]
}
